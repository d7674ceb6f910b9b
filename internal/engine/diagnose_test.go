package engine

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestDiagnoseSpeaksTheStudysUnits: a study shown in inches has no millimetres in
// its words.
func TestDiagnoseSpeaksTheStudysUnits(t *testing.T) {
	for _, tt := range []struct {
		shown       study.Units
		want, alien string
	}{
		{study.Millimetre, " mm", " in"},
		{study.Inch, " in", " mm"},
	} {
		d := document(t, "")
		d.Display = &study.Display{Units: tt.shown}
		r, err := Diagnose(t.Context(), d, DiagnoseOptions{Candidate: "base"})
		if err != nil {
			t.Fatal(err)
		}
		text := strings.ReplaceAll(strings.Join(r.Cars[0].Words, "\n"), " inner", "")
		text = strings.ReplaceAll(text, " inboard", "")
		if !strings.Contains(text, "path then strays") || !strings.Contains(text, tt.want) || strings.Contains(text, tt.alien) {
			t.Errorf("shown in %s:\n%s", tt.shown, text)
		}
	}
}

func TestDiagnoseRefuses(t *testing.T) {
	d := document(t, "")
	_, err := Diagnose(t.Context(), d, DiagnoseOptions{Candidate: "nobody"})
	wantError(t, err, Wrong, "candidate", "nobody")
	d.Suspension.Left.Points["tieRodOuter"] = d.Suspension.Left.Points["tieRodInner"]
	if _, err = Diagnose(t.Context(), d, DiagnoseOptions{}); err == nil || !strings.Contains(err.Error(), "the tie rod has no length") {
		t.Errorf("Diagnose without a tie rod = %v, want an error that says so", err)
	}
}
