package engine

import (
	"toewright/optimize"
	"toewright/solver"
)

// judging turns a car of the study into what package optimize judges many cars
// by: the window and target of the study's search, straight ahead.
func (s *sweeper) judging(c car) optimize.Judge {
	j := optimize.Judge{Base: s.base, Hold: c.axle.Hold(), Travels: s.grid.mm, Targets: targets(s.doc), Sides: solver.LeftOnly}
	if s.asymmetric() {
		j.Sides = solver.BothSides
	}
	return j
}

// asymmetric reports whether left and right have to be judged apart: where the
// study states a right side or a target of its own for it.
func (s *sweeper) asymmetric() bool {
	return s.doc.Suspension.Right != nil || s.design.Kind.CommonPoints != nil ||
		s.doc.Search != nil && s.doc.Search.TargetRight != nil
}

// measureOf returns what "rms" and "peak" name.
func measureOf(name string) optimize.Measure {
	if name == "peak" {
		return optimize.Peak
	}
	return optimize.RMS
}

// progressOf returns what reports the items of a run of n cars.
func progressOf(report func(Progress), n int) func(int) {
	if report == nil {
		return nil
	}
	return func(done int) {
		report(Progress{Fraction: float64(done) / float64(max(n, 1)), Evaluations: done, Best: none})
	}
}
