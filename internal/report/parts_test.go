package report

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

func TestParts(t *testing.T) {
	part := func(slot, name string, price float64, changes study.Changes, excludes ...string) study.Part {
		return study.Part{Slot: slot, Name: name, Price: price, Changes: changes, Excludes: excludes}
	}
	catalogue := []study.Part{
		part("spacer", "three", 14, study.Changes{"tieRodOuterHeight": -3}),
		part("spacer", "six", 16, study.Changes{"tieRodOuterHeight": -6}),
		part("spacer", "six, dear", 26, study.Changes{"tieRodOuterHeight": -6}),
		part("arm", "dropped", 90, study.Changes{"tieRodOuterHeight": -3, "steeringArmLength": 4}),
		part("rack", "blocks", 38, study.Changes{"tieRodInnerHeight": 8}, "dropped"),
		part("alignment", "caster 6", 60, study.Changes{"caster": 6}),
		part("alignment", "shims", 5, study.Changes{"camber": -1, "caster": 6}),
	}
	tests := []struct {
		name    string
		changes study.Changes
		want    string
	}{
		{"one part, the cheaper", study.Changes{"tieRodOuterHeight": -6}, "six"},
		{"two that add up", study.Changes{"tieRodOuterHeight": -9, "steeringArmLength": 4}, "six+dropped"},
		{"two slots", study.Changes{"tieRodOuterHeight": -3, "tieRodInnerHeight": 8}, "three+blocks"},
		{"a setting is none to add", study.Changes{"caster": 6}, "caster 6"},
		{"excluded", study.Changes{"tieRodOuterHeight": -3, "steeringArmLength": 4, "tieRodInnerHeight": 8}, ""},
		{"not of the catalogue", study.Changes{"tieRodOuterHeight": -5}, ""},
		{"no changes", nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := car(t, "double-wishbone-rack")
			d.Catalogue = catalogue
			d.Candidates = []study.Candidate{{Name: "x", Changes: tt.changes}}
			g := &gatherer{sheet: &Sheet{Study: d, Candidate: "x"}}
			if err := g.parts(); err != nil {
				t.Fatal(err)
			}
			var names []string
			for _, p := range g.sheet.Parts {
				names = append(names, p.Name)
			}
			if got := strings.Join(names, "+"); got != tt.want {
				t.Errorf("parts %q, want %q", got, tt.want)
			}
		})
	}
}

// TestPartsGivesUp: a catalogue whose every part would do has too many combinations to
// try them all.
func TestPartsGivesUp(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	d.Candidates = []study.Candidate{{Name: "x", Changes: study.Changes{"tieRodOuterHeight": -1e-3}}}
	d.Catalogue = nil
	for slot := range 40 {
		name := strings.Repeat("s", slot+1)
		d.Catalogue = append(d.Catalogue, study.Part{Slot: name, Name: name, Changes: study.Changes{"tieRodOuterHeight": -1}})
	}
	g := &gatherer{sheet: &Sheet{Study: d, Candidate: "x"}}
	if err := g.parts(); err != nil || len(g.sheet.Parts) != 0 {
		t.Errorf("parts %v, %v, want none", g.sheet.Parts, err)
	}
}
