package model

import (
	"math"

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
	// Slope of the toe at travel 0, in radians per mm: exact, not from neighbours.
	Slope float64
	// Reach is whole where the car reaches all of the window.
	Reach solver.Reach
}

// figuresOf returns the figures of a curve. They are NaN for one without travel 0.
func figuresOf(c *solver.Curve, target *optimize.Target) Figures {
	rest := atRest(c)
	if rest == nil {
		f := noFigures()
		f.Reach = c.Reach
		return f
	}
	f := Figures{Slope: rest.Instant.ToeRate, Reach: c.Reach}
	lo, hi, sum := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range c.Positions {
		e := float64(p.Toe - rest.Toe - target.At(p.Travel))
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

// atRest returns the position at travel 0, or nil.
func atRest(c *solver.Curve) *solver.Position {
	for i := range c.Positions {
		if c.Positions[i].Travel == 0 {
			return &c.Positions[i]
		}
	}
	return nil
}
