package model_test

import (
	"strings"
	"testing"

	"toewright/internal/engine"
)

// TestSizesOnTheShopsStep takes the demo's spacers of 12 mm to a step of 5 mm: the ball is
// made 110 mm from the face, the arms are alike and stand on one line, and what it costs in
// toe is said.
func TestSizesOnTheShopsStep(t *testing.T) {
	d := deskWith(t)
	r, err := engine.Arm(t.Context(), d.Session.Document(), engine.ArmOptions{Candidate: "Spacers 12 mm", Step: new(5.0)})
	if err != nil {
		t.Fatal(err)
	}
	list := d.Sizes(r)
	if s := list[0]; s.Label != "from face A, rearward" || s.Was != "109.56" || s.Make != "110.00" || !strings.HasPrefix(s.Exact, "109.2") || !strings.HasPrefix(s.Off, "+0.79") {
		t.Errorf("%+v, want 109.56 before, 109.2 exact and 110 to make from face A", s)
	}
	if len(list) != 7 || list[3].Exact != "−12.00" {
		t.Errorf("%+v, want seven lines, the fourth 12 down along the stud", list)
	}
	cost := d.RoundingCost(r)
	if !strings.Contains(cost, " left 0.031, ") || strings.Contains(cost, "left 0.031, 0.031") || !strings.Contains(cost, "Ø1.00 across the stud, 1.00 along it") {
		t.Errorf("%q, want what 5 mm cost and the zones of the study", cost)
	}
	// Made otherwise on the right, each arm has lines of its own.
	r.Sides[1].Part.Sizes[0].Exact += 1
	if unlike := d.Sizes(r); len(unlike) != 14 || unlike[1].Label != "from face A, rearward, right" {
		t.Errorf("%+v, want a line for each arm", unlike)
	}
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
