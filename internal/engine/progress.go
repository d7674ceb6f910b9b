package engine

import (
	"math"

	"toewright/internal/study"
)

// Progress says how far a long call has come.
type Progress struct {
	Fraction    float64 `json:"fraction"` // of the whole, from 0 to 1
	Evaluations int     `json:"evaluations"`
	Best        Number  `json:"best"` // the figure of the best so far, degrees; none before there is one
	// Values are those of the best so far of a search, as the changes of a candidate; nil of
	// other calls, and before there is one.
	Values study.Changes `json:"values,omitzero"`
	// Designs are those that a trade-off has found so far; nil of other calls, and before
	// there is one.
	Designs *TradeOffResult `json:"designs,omitzero"`
}

// stage is a part of a call's work that reports its progress: from one fraction of the
// whole to another.
type stage struct {
	tell     func(Progress)
	from, to float64
}

// stages returns the whole of a call that reports to tell, which may be nil.
func stages(tell func(Progress)) stage { return stage{tell, 0, 1} }

// within returns a part of a stage.
func (s stage) within(from, to float64) stage {
	length := s.to - s.from
	return stage{s.tell, s.from + length*from, s.from + length*to}
}

// pass reports a progress of the stage as that of the whole.
func (s stage) pass(p Progress) {
	if s.tell == nil {
		return
	}
	p.Fraction = s.from + (s.to-s.from)*math.Max(0, math.Min(p.Fraction, 1))
	s.tell(p)
}

// report says how much of the stage is done.
func (s stage) report(fraction float64) { s.pass(Progress{Fraction: fraction, Best: none}) }

// items returns what reports how many of n items of a run are done; nil where nobody
// hears of it.
func (s stage) items(n int) func(int) {
	if s.tell == nil {
		return nil
	}
	return func(done int) {
		s.pass(Progress{Fraction: float64(done) / float64(max(n, 1)), Evaluations: done, Best: none})
	}
}

// Part returns who hears of a part of a longer job, from one fraction of it to another,
// where tell hears of the whole; nil where that is nil.
func Part(tell func(Progress), from, to float64) func(Progress) {
	if tell == nil {
		return nil
	}
	return stages(tell).within(from, to).pass
}
