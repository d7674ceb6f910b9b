package engine

import (
	"math"

	"toewright/optimize"
	"toewright/solver"
)

// Figures are the numbers that are said of one wheel's curves over a window, of
// the positions that it reaches. Toe change is against the car's own toe at travel
// 0; error is toe change less the target.
type Figures struct {
	StaticToe Number `json:"staticToe"`
	RMS       Number `json:"rms"`  // of the error, over the positions
	Peak      Number `json:"peak"` // largest size of the error
	// PeakTravel is where it is largest.
	PeakTravel Number `json:"peakTravel"`
	PeakToPeak Number `json:"peakToPeak"` // range of the toe
	Slope      Number `json:"slope"`      // of the toe at travel 0, degrees per unit of length
	Curvature  Number `json:"curvature"`  // degrees per unit of length squared
	LeastToe   Number `json:"leastToe"`   // the toe itself, static toe included
	MostToe    Number `json:"mostToe"`

	StaticCamber   Number `json:"staticCamber"`
	CamberRange    Number `json:"camberRange"` // greatest less least
	StaticCaster   Number `json:"staticCaster"`
	CasterRange    Number `json:"casterRange"`
	StaticKingpin  Number `json:"staticKingpinInclination"`
	ScrubRadius    Number `json:"scrubRadius"` // at travel 0
	Trail          Number `json:"trail"`       // at travel 0
	HalfTrackRange Number `json:"halfTrackRange"`
	WheelbaseRange Number `json:"wheelbaseRange"`
	CrossesZero    bool   `json:"crossesZero"` // toe goes from toe-in to toe-out on the way
}

// less returns the figures of f less those of the yardstick y. Whether the toe
// crosses zero is f's own.
func (f Figures) less(y *Figures) Figures {
	mine, theirs := f.numbers(), y.numbers()
	for i := range mine {
		*mine[i] -= *theirs[i]
	}
	return f
}

// numbers lists all figures that have differences.
func (f *Figures) numbers() []*Number {
	return []*Number{
		&f.StaticToe, &f.RMS, &f.Peak, &f.PeakTravel, &f.PeakToPeak, &f.Slope, &f.Curvature, &f.LeastToe, &f.MostToe,
		&f.StaticCamber, &f.CamberRange, &f.StaticCaster, &f.CasterRange, &f.StaticKingpin,
		&f.ScrubRadius, &f.Trail, &f.HalfTrackRange, &f.WheelbaseRange,
	}
}

// figures returns the figures of one side's curve but for slope and curvature.
func (s *sweeper) figures(c *solver.Curve, t *optimize.Target) Figures {
	var f Figures
	for _, n := range f.numbers() {
		*n = none
	}
	home := atRest(c.Positions)
	if home == nil {
		return f
	}
	s.toeFigures(c.Positions, home, t, &f)
	rest := s.position(home)
	f.StaticToe, f.StaticCamber = Number(rest.Toe), Number(rest.Camber)
	f.StaticCaster, f.StaticKingpin = rest.Caster, rest.KingpinInclination
	f.ScrubRadius, f.Trail = rest.ScrubRadius, rest.Trail
	s.ranges(c.Positions, &f)
	return f
}

// atRest returns the position at travel 0, or nil.
func atRest(ps []solver.Position) *solver.Position {
	for i := range ps {
		if ps[i].Travel == 0 {
			return &ps[i]
		}
	}
	return nil
}

// toeFigures sets what is said of the error against the target.
func (s *sweeper) toeFigures(ps []solver.Position, home *solver.Position, t *optimize.Target, f *Figures) {
	sum, peak := 0.0, -1.0
	for i := range ps {
		e := (ps[i].Toe - home.Toe - t.At(ps[i].Travel)).Degrees()
		sum += e * e
		if a := math.Abs(e); a > peak {
			peak, f.PeakTravel = a, Number(s.doc.Units.FromMillimetres(ps[i].Travel))
		}
	}
	f.RMS, f.Peak = Number(math.Sqrt(sum/float64(len(ps)))), Number(peak)
}

// ranges sets how much the positions differ among each other.
func (s *sweeper) ranges(ps []solver.Position, f *Figures) {
	spread := func(of func(*solver.Position) float64) (least, most Number) {
		lo, hi := math.Inf(1), math.Inf(-1)
		for i := range ps {
			x := of(&ps[i])
			lo, hi = math.Min(lo, x), math.Max(hi, x) // NaN stays
		}
		return Number(lo), Number(hi)
	}
	width := func(of func(*solver.Position) float64) Number {
		lo, hi := spread(of)
		return hi - lo
	}
	mm := s.doc.Units.FromMillimetres
	f.LeastToe, f.MostToe = spread(func(p *solver.Position) float64 { return p.Toe.Degrees() })
	f.PeakToPeak = f.MostToe - f.LeastToe
	f.CrossesZero = f.LeastToe < 0 && f.MostToe > 0
	f.CamberRange = width(func(p *solver.Position) float64 { return p.Camber.Degrees() })
	f.CasterRange = width(func(p *solver.Position) float64 { return p.Caster.Degrees() })
	f.HalfTrackRange = width(func(p *solver.Position) float64 { return mm(p.HalfTrackChange) })
	f.WheelbaseRange = width(func(p *solver.Position) float64 { return mm(p.WheelbaseChange) })
}
