package model_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// TestEditSolvesAsFromTheBeginning holds the cars after edits of candidates, of which
// those left alone are not solved anew, against all cars solved anew.
func TestEditSolvesAsFromTheBeginning(t *testing.T) {
	s := open(t)
	do := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, k := range []study.Candidate{
		{Name: "lower", Changes: study.Changes{"tieRodOuterHeight": -6}},
		{Name: "caster, held", Changes: study.Changes{"caster": 6}},
		{Name: "caster, not held", Changes: study.Changes{"caster": 6, "rideHeight": -20}, Hold: []string{"toe"}},
		{Name: "the same, held", Changes: study.Changes{"caster": 6, "rideHeight": -20}},
	} {
		_, err := s.AddCandidate(k)
		do(err)
	}
	do(s.SetChange(1, "tieRodOuterHeight", -9, "drag"))
	list := s.Cars().List
	_, err := s.Arrange([]*model.Car{list[2], list[3], list[1], list[4]})
	do(err)
	do(s.Rename(1, "first"))
	do(s.Hide(2, true))
	do(s.Delete(1))
	want := model.Solve(s.Document())
	for i, got := range s.Cars().List {
		w := want.List[i]
		if got.Index != w.Index || got.Name != w.Name || got.Hidden != w.Hidden {
			t.Errorf("car %d is %d %q hidden %t, want %d %q %t", i, got.Index, got.Name, got.Hidden, w.Index, w.Name, w.Hidden)
		}
		for _, side := range solver.Sides {
			if diff := cmp.Diff(w.Figures[side], got.Figures[side]); diff != "" {
				t.Errorf("%s, %s side: figures differ from those solved anew: %s", w.Name, side, diff)
			}
		}
	}
}
