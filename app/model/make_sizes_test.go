package model_test

import (
	"strings"
	"testing"

	"toewright/internal/engine"
)

// TestSizesOnTheShopsStep takes the demo's spacers of 12 mm to steps of 5 mm: along the stud
// the hole has gone 12 mm down, of which 10 are made and 2 are left.
func TestSizesOnTheShopsStep(t *testing.T) {
	d := deskWith(t)
	r, err := engine.Arm(t.Context(), d.Session.Document(), engine.ArmOptions{Candidate: "Spacers 12 mm"})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range d.Sizes(r, 0, 5) {
		if s.Label != "Hole, along the stud" {
			continue
		}
		if s.Exact != "−12.00" || s.Make != "−10.00" || s.Off != "+2.00" || !strings.HasPrefix(s.Tolerance, "±") {
			t.Errorf("exact %s, to make %s, off %s, tolerance %q; want −12.00, −10.00, +2.00 and what the study states", s.Exact, s.Make, s.Off, s.Tolerance)
		}
		return
	}
	t.Error("no size along the stud")
}

// TestCoveredInWords lists what the demo's best candidate fits: its own caster lies within
// the interval of caster, and each interval says what ends it.
func TestCoveredInWords(t *testing.T) {
	d := deskWith(t)
	limit := 0.1
	r, err := engine.Covers(t.Context(), d.Session.Document(), engine.CoversOptions{Candidate: "Spacers 12 mm", Limit: &limit, By: "caster"})
	if err != nil {
		t.Fatal(err)
	}
	list := d.Covered(r)
	if len(list) != 1 || !strings.Contains(list[0].Label, "caster") || !strings.Contains(list[0].Ends, "; ") {
		t.Fatalf("%v, want the interval of caster and what ends it", list)
	}
	c := r.Covers[0]
	if !(c.Low < c.Own && c.Own < c.High) {
		t.Errorf("own %g is not within %g to %g", float64(c.Own), float64(c.Low), float64(c.High))
	}
}
