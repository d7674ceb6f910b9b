package engine

import "toewright/solver"

// shapeStep is the spacing in mm of the positions from which slope and curvature
// are taken. The error of the formulas goes with its fourth power: below 1e-9 of
// the figure for a curve that turns within 200 mm. A toe is good to 1e-12 rad, so
// rounding stays well below that too.
const shapeStep = 1.0

// shapeTravels are the five positions about the static one.
var shapeTravels = []float64{-2 * shapeStep, -shapeStep, 0, shapeStep, 2 * shapeStep}

// shape returns slope (degrees per unit of length) and curvature (per unit
// squared) of the toe at travel 0, of both sides of a car. They are none where a
// lock is so near that the linkage cannot be moved about its static position.
func (s *sweeper) shape(car car, a Attitude) (slope, curvature [2]Number, err error) {
	if err := s.through(car, a, shapeTravels); err != nil {
		return slope, curvature, err
	}
	for _, side := range solver.Sides {
		slope[side], curvature[side] = none, none
		if c := &s.curves[side]; c.Reach.Whole() {
			slope[side], curvature[side] = s.differences(c.Positions)
		}
	}
	return slope, curvature, nil
}

// differences are the central formulas of fourth order on five points.
func (s *sweeper) differences(p []solver.Position) (slope, curvature Number) {
	t := [5]float64{}
	for i := range t {
		t[i] = p[i].Toe.Degrees()
	}
	h := s.doc.Units.FromMillimetres(shapeStep)
	first := (t[0] - 8*t[1] + 8*t[3] - t[4]) / (12 * h)
	second := (-t[0] + 16*t[1] - 30*t[2] + 16*t[3] - t[4]) / (12 * h * h)
	return Number(first), Number(second)
}
