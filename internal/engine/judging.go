package engine

import (
	"cmp"

	"toewright/optimize"
	"toewright/solver"
)

// judging turns a car of the study into what package optimize judges many cars
// by: the window and target of the study's search, straight ahead. Option is the side
// that a call is asked for.
func (s *sweeper) judging(c car, option string) (optimize.Judge, error) {
	sides, err := sidesJudged(option)
	return optimize.Judge{Base: s.base, Hold: c.axle.Hold(), Travels: s.grid.mm, Targets: targets(s.doc), Sides: sides}, err
}

// sideNames are the sides judged as options and results name them.
var sideNames = map[solver.Selection]string{solver.BothSides: "both", solver.LeftOnly: "left", solver.RightOnly: "right"}

// sidesJudged returns the sides that a call's option asks to be judged: both, of which
// the worse is the car's, where it is empty.
func sidesJudged(option string) (solver.Selection, error) {
	for side, name := range sideNames {
		if name == cmp.Or(option, sideNames[solver.BothSides]) {
			return side, nil
		}
	}
	return solver.BothSides, wrongf("side", "%.40q is not a side, want left, right or both", option)
}

// measureOf returns what "rms" and "peak" name.
func measureOf(name string) optimize.Measure {
	if name == "peak" {
		return optimize.Peak
	}
	return optimize.RMS
}
