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
			left, right := model.TargetPoints(d, solver.Left), model.TargetPoints(d, solver.Right)
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
		if k := model.KindOfTarget(s.Document().Search); k != model.PointsTarget {
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
