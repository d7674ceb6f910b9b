package model

import (
	"math"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// Figures are the numbers that matter of one side's toe curve, against the
// study's target, over the travels that the car reaches.
type Figures struct {
	RMS  solver.Angle // of toe change less target
	Peak solver.Angle // largest magnitude of it
	// PeakTravel is where that is, mm.
	PeakTravel float64
	// PeakToPeak is the range of the toe itself.
	PeakToPeak solver.Angle
	// Whole says that the car reaches the whole window.
	Whole bool
}

// figuresOf returns the figures of a curve. They are NaN for one without travel 0.
func figuresOf(c *solver.Curve, target *optimize.Target) Figures {
	home, ok := toeAtRest(c)
	if !ok {
		nan := solver.Angle(math.NaN())
		return Figures{RMS: nan, Peak: nan, PeakToPeak: nan}
	}
	f := Figures{Whole: c.Reach.Whole()}
	lo, hi, sum := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range c.Positions {
		e := float64(p.Toe - home - target.At(p.Travel))
		sum += e * e
		if a := solver.Angle(math.Abs(e)); a > f.Peak {
			f.Peak, f.PeakTravel = a, p.Travel
		}
		lo, hi = math.Min(lo, float64(p.Toe)), math.Max(hi, float64(p.Toe))
	}
	f.RMS = solver.Angle(math.Sqrt(sum / float64(len(c.Positions))))
	f.PeakToPeak = solver.Angle(hi - lo)
	return f
}

// toeAtRest returns the toe at travel 0.
func toeAtRest(c *solver.Curve) (solver.Angle, bool) {
	for _, p := range c.Positions {
		if p.Travel == 0 {
			return p.Toe, true
		}
	}
	return 0, false
}

// targetOf returns the target of a side's toe change; flat where the study has
// none.
func targetOf(d *study.Document, s solver.Side) *optimize.Target {
	t := &optimize.Target{}
	if d.Search == nil {
		return t
	}
	points := d.Search.Target
	if s == solver.Right && d.Search.TargetRight != nil {
		points = d.Search.TargetRight
	}
	for _, p := range points {
		t.Travel = append(t.Travel, d.Units.Millimetres(p[0]))
		t.Change = append(t.Change, solver.Deg(p[1]))
	}
	return t
}
