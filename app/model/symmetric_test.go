package model

import (
	"testing"

	"toewright/internal/engine"
	"toewright/solver"
)

// TestShownSides shows one side for both where the wheels toe alike at every travel, and both where
// one of them toes otherwise at one travel, or reaches fewer.
func TestShownSides(t *testing.T) {
	car := func(left, right []float64) *Car {
		c := &engine.LiveCar{}
		for side, toes := range [][]float64{left, right} {
			for i, toe := range toes {
				c.Curves[side].Positions = append(c.Curves[side].Positions, solver.Position{Travel: float64(i), Toe: solver.Angle(toe)})
			}
		}
		return c
	}
	alike := car([]float64{0.1, 0, -0.1}, []float64{0.1, 0, -0.1})
	for name, tt := range map[string]struct {
		cars []*Car
		want int
	}{
		"alike":                                {[]*Car{alike, alike}, 1},
		"one travel of one car":                {[]*Car{alike, car([]float64{0.1, 0, -0.1}, []float64{0.1, 0, -0.1001})}, 2},
		"the same figures the other way round": {[]*Car{car([]float64{0.1, 0, -0.1}, []float64{-0.1, 0, 0.1})}, 2},
		"fewer travels":                        {[]*Car{car([]float64{0.1, 0, -0.1}, []float64{0.1, 0})}, 2},
	} {
		if got := ShownSides(tt.cars); len(got) != tt.want || got[0] != solver.Left {
			t.Errorf("%s: sides %v, want %d from the left on", name, got, tt.want)
		}
	}
}
