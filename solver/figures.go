package solver

import "math"

// Figures are what a toe curve comes to. Toe change is counted from the toe at
// travel 0 of the same curve, and its error from the target.
type Figures struct {
	// Slope, in radians per mm, and Curvature, in radians per mm², are the
	// exact derivatives of the toe at travel 0, set where the sweep asked for
	// instants.
	Slope, Curvature float64
	// PeakToPeak is the span of the toe change.
	PeakToPeak Angle
	// Worst is the toe change farthest from 0, at WorstTravel.
	Worst       Angle
	WorstTravel float64
	// Peak is the largest error, without sign, at PeakTravel.
	Peak       Angle
	PeakTravel float64
	// RMS is the root of the mean square error over all positions, travel 0
	// included.
	RMS Angle
	// Crosses says that the toe itself, static toe included, is in at some
	// travel and out at another. Common practice keeps it to one side.
	Crosses bool
}

// NewFigures returns the figures of a curve's positions against the target toe
// change; a nil target is flat. It returns false where no position has travel 0,
// from which changes count.
func NewFigures(ps []Position, target func(travel float64) Angle) (Figures, bool) {
	home := homeOf(ps)
	if home < 0 {
		return Figures{}, false
	}
	f := Figures{Slope: ps[home].Instant.ToeRate, Curvature: ps[home].Instant.ToeCurvature}
	var s span
	var misses Misses
	for i := range ps {
		p := &ps[i]
		change := p.Toe - ps[home].Toe
		wanted := Angle(0)
		if target != nil {
			wanted = target(p.Travel)
		}
		if math.Abs(float64(change)) > math.Abs(float64(f.Worst)) {
			f.Worst, f.WorstTravel = change, p.Travel
		}
		if misses.See(change - wanted) {
			f.PeakTravel = p.Travel
		}
		s.extend(float64(p.Toe))
	}
	f.PeakToPeak, f.Crosses = Angle(s.hi-s.lo), s.lo < 0 && s.hi > 0
	f.RMS, f.Peak = misses.RMS(), misses.Peak()
	return f, true
}

// homeOf returns the index of the position at travel 0, or -1.
func homeOf(ps []Position) int {
	for i := range ps {
		if ps[i].Travel == 0 {
			return i
		}
	}
	return -1
}

// Misses gathers the errors of a curve into its two figures. The zero value has seen none.
type Misses struct {
	squares, peak float64
	count         int
}

// See takes an error into account and reports whether it is the largest so far, without
// sign. One that is NaN makes both figures NaN.
func (m *Misses) See(miss Angle) bool {
	size := math.Abs(float64(miss))
	m.squares += size * size
	m.count++
	largest := size > m.peak
	m.peak = math.Max(m.peak, size)
	return largest
}

// RMS returns the root of the mean square of the errors, NaN of none.
func (m *Misses) RMS() Angle { return Angle(math.Sqrt(m.squares / float64(m.count))) }

// Peak returns the largest size of the errors.
func (m *Misses) Peak() Angle { return Angle(m.peak) }

// span is the least interval that holds all values it was extended by.
type span struct {
	lo, hi float64
	filled bool
}

func (s *span) extend(v float64) {
	if !s.filled {
		s.lo, s.hi, s.filled = v, v, true
		return
	}
	s.lo, s.hi = math.Min(s.lo, v), math.Max(s.hi, v)
}
