package report

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestLoadsOnTheSheet: the cases of the study stand before and after, in N, with lbf
// beside them where lengths are shown in inches; a study without cases has no such part,
// and one without a spring says which is missing.
func TestLoadsOnTheSheet(t *testing.T) {
	d := car(t, "swing-arm-rack")
	page := seen(written(t, gathered(t, d, Options{Candidate: "Arm up 20"})))
	for _, want := range []string{"Loads", "Kerb strike", "Parking", "twist N m", "stud MPa", " → ", "no verdict"} {
		if !strings.Contains(page, want) {
			t.Errorf("the sheet has no %q", want)
		}
	}
	if n := strings.Count(page, "Kerb strike"); n != 1 {
		t.Errorf("the kerb strike stands there %d times, want once: its other wheel bears nothing", n)
	}
	if strings.Contains(page, "lbf") {
		t.Error("a sheet in mm shows lbf")
	}
	d.Display = &study.Display{Units: study.Inch}
	if page := seen(written(t, gathered(t, d, Options{}))); !strings.Contains(page, "tie rod N (lbf)") || !strings.Contains(page, "stud MPa (psi)") {
		t.Error("a sheet in inches does not show lbf and psi")
	}
	d.Suspension.Left.Spring = nil
	if page := seen(written(t, gathered(t, d, Options{}))); !strings.Contains(page, "loads: left spring: is missing") {
		t.Error("the sheet does not say which spring is missing")
	}
	if page := seen(written(t, gathered(t, car(t, "strut-rack"), Options{}))); strings.Contains(page, "no verdict") {
		t.Error("a study without load cases has loads on its sheet")
	}
}
