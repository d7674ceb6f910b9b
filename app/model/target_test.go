package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// TestTargetPoints: a target is drawn whichever way the study states it.
func TestTargetPoints(t *testing.T) {
	own := [][2]float64{{-10, 0}, {10, 1}}
	for _, tt := range []struct {
		name        string
		search      *study.Search
		left, right int // points
	}{
		{"no search", nil, 0, 0},
		{"flat", &study.Search{}, 0, 0},
		{"points", &study.Search{Target: own}, 2, 2},
		{"points of the right side", &study.Search{Target: own, TargetRight: own[:1]}, 2, 1},
		{"slope", &study.Search{TargetSlope: 0.01}, 2, 2},
		{"another car's", &study.Search{TargetOf: "base"}, 25, 25},
		{"a car that is gone", &study.Search{TargetOf: "gone"}, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := open(t).Document().Clone()
			d.Travel, d.Search = &study.Travel{Bump: 60, Droop: 60, Step: 5}, tt.search
			cars := model.Solve(d)
			left, right := cars.TargetPoints(solver.Left), cars.TargetPoints(solver.Right)
			if len(left) != tt.left || len(right) != tt.right {
				t.Errorf("%d and %d points, want %d and %d", len(left), len(right), tt.left, tt.right)
			}
		})
	}
}

// TestTargetIsReplaced: what is stated on the page takes the place of another car's
// curve, so that the target is never stated twice.
func TestTargetIsReplaced(t *testing.T) {
	s := open(t)
	state := map[string]func() error{
		"flat":   func() error { return s.SetTarget(model.FlatTarget) },
		"slope":  func() error { return s.SetSlope(0.002) },
		"points": func() error { return s.SetTargetPoints([][2]float64{{0, 0}, {20, 1}}, "") },
	}
	for name, change := range state {
		if err := s.EditSearch("another car's", "", func(f *study.Search) { f.Target, f.TargetRight, f.TargetOf = nil, nil, "base" }); err != nil {
			t.Fatal(err)
		}
		if k := model.KindOfTarget(s.Document().Search); k != model.CarTarget {
			t.Errorf("another car's curve is of kind %d", k)
		}
		if err := change(); err != nil {
			t.Fatal(err)
		}
		if err := s.Document().ReadyToSearch(); err != nil || s.Document().Search.TargetOf != "" {
			t.Errorf("%s: target of %q, %v", name, s.Document().Search.TargetOf, err)
		}
	}
	slope := &study.Search{TargetSlope: 0.003}
	if model.KindOfTarget(slope) != model.SlopeTarget || model.Slope(slope) != 0.003 {
		t.Errorf("slope %g of kind %d", model.Slope(slope), model.KindOfTarget(slope))
	}
}

// TestTargetOfAnotherCar wants the curve of a candidate: the one with its parts is on it to
// the last bit, also after it was renamed and changed, and until it is deleted.
func TestTargetOfAnotherCar(t *testing.T) {
	s := open(t)
	do := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"One", "Two"} {
		_, err := s.AddCandidate(study.Candidate{Name: name})
		do(err)
	}
	key := "tieRodOuterHeight"
	rms := func(car int) float64 { return s.Cars().List[car].Figures[solver.Left].RMS.Degrees() }
	do(s.SetTarget(model.CarTarget))
	if got := s.TargetCar(); got != 0 || rms(0) > 1e-9 {
		t.Errorf("the curve of car %d is wanted, the base car is %g deg off; want its own", got, rms(0))
	}
	do(s.SetChange(1, key, -9, ""))
	do(s.SetTargetCar(1))
	if rms(1) > 1e-9 || rms(0) < 0.01 {
		t.Errorf("the car itself is %g deg off its own curve, the base car %g", rms(1), rms(0))
	}
	do(s.Rename(1, "Long arm"))
	if got := s.Document().Search.TargetOf; got != "Long arm" || s.TargetCar() != 1 || s.Document().ReadyToSearch() != nil {
		t.Errorf("after the rename the curve of %q is wanted", got)
	}
	before := rms(0)
	do(s.SetChange(1, key, -4, ""))
	if rms(1) > 1e-9 || rms(0) > before/1.5 {
		t.Errorf("the target does not follow the car: it is %g deg off, the base car %g, before %g", rms(1), rms(0), before)
	}
	do(s.SetChange(2, key, -4, ""))
	if got := s.Cars().TargetPoints(solver.Left); len(got) < 3 {
		t.Errorf("%d points are left of the target after a change of another car", len(got))
	}
	do(s.Delete(1))
	if err := s.Document().ReadyToSearch(); s.TargetCar() != -1 || err == nil {
		t.Errorf("the car is deleted: car %d is wanted, the search says %v", s.TargetCar(), err)
	}
	if len(s.Cars().TargetPoints(solver.Left)) != 0 {
		t.Error("a target is left of a car that is gone")
	}
}
