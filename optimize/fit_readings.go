package optimize

import (
	"fmt"
	"math"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Reading is one reading of a gauge.
type Reading struct {
	Travel float64 // of the wheel centre, mm, bump positive
	Value  float64 // mm, toe-in positive, from wherever the gauge's zero stands
}

// ReadingSet is what was read in one run on one side of the car: one set-up, one
// gauge, one zero.
type ReadingSet struct {
	Name string // for messages; may be empty
	Side solver.Side
	Gauge
	// Base is the length over which toe is read, and Repeatability the standard
	// deviation of one reading; mm.
	Base, Repeatability float64
	// Changes are the parts fitted when the readings were taken. Toe, camber and
	// caster were set to what the study says.
	Changes []solver.Change
	// Run is the way the wheel went, so that play shows as hysteresis.
	Run RunDirection
	// SlopeSD is the standard deviation of what the gauge gains steadily with travel,
	// length of reading by length of travel, which all runs of a side share; 0 is that
	// of a gauge known not to. Turned says that the gauge stood end for end, so that it
	// loses as much as it gained before.
	SlopeSD float64
	Turned  bool
	// Zero is what the gauge reads at no toe; nil where it was zeroed anywhere.
	Zero     *float64
	Readings []Reading // in any order; a travel may stand twice
}

// RunDirection is the way in which a run was taken.
type RunDirection uint8

// The directions of a run.
const (
	AnyRun RunDirection = iota
	BumpRun
	DroopRun
)

// check returns an error that says what set number n lacks.
func (s *ReadingSet) check(n int) error {
	if !(s.Base > 0) || math.IsInf(s.Base, 0) {
		return nlp.ProblemErrorf("%s: base is %g mm, must be positive", s.label(n), s.Base)
	}
	if !(s.Repeatability > 0) || math.IsInf(s.Repeatability, 0) {
		return nlp.ProblemErrorf("%s: repeatability is %g mm, must be positive: state one standard deviation of a reading", s.label(n), s.Repeatability)
	}
	if !(s.SlopeSD >= 0) || math.IsInf(s.SlopeSD, 0) {
		return nlp.ProblemErrorf("%s: slope has standard deviation %g, must be 0 or more", s.label(n), s.SlopeSD)
	}
	if len(s.Readings) < 2 {
		return nlp.ProblemErrorf("%s has %d readings, needs 2 or more: the gauge's zero takes one", s.label(n), len(s.Readings))
	}
	for i, r := range s.Readings {
		if !nlp.AllFinite([]float64{r.Travel, r.Value}) {
			return nlp.ProblemErrorf("%s: reading %d is not a number", s.label(n), i+1)
		}
		if s.Gauge.bounded() && math.Abs(r.Value-s.known()) > s.Base {
			return nlp.ProblemErrorf("%s: reading %d is %g mm, longer than the %s's base of %g mm", s.label(n), i+1, r.Value, s.Gauge, s.Base)
		}
	}
	return nil
}

// known returns the zero where it is known, else 0.
func (s *ReadingSet) known() float64 {
	if s.Zero != nil {
		return *s.Zero
	}
	return 0
}

// leans returns what the reading gains by the slope of the gauge and by travel: 1, -1
// where the gauge was turned round, 0 where it is known not to lean.
func (s *ReadingSet) leans() float64 {
	switch {
	case s.SlopeSD == 0:
		return 0
	case s.Turned:
		return -1
	}
	return 1
}

// Alike reports whether all readings are the same figure.
func (s *ReadingSet) Alike() bool {
	for _, r := range s.Readings {
		if r.Value != s.Readings[0].Value {
			return false
		}
	}
	return true
}

// label names set number n in messages, counted from 1.
func (s *ReadingSet) label(n int) string {
	name := fmt.Sprintf("readings %d (%s)", n+1, s.Side)
	if s.Name != "" {
		name += " " + s.Name
	}
	return name
}
