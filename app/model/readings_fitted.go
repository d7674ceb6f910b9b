package model

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// Residual is by how much a reading is more than the fitted car gives, in file units.
type Residual struct {
	Off float64
	Out bool // it was left out of the fit
}

// Residuals returns those of set i of the study's readings, in the order of its values: nil
// where the fit, of a study with the same readings, has none.
func Residuals(d *study.Document, r *engine.FitResult, i int) []Residual {
	if i < 0 || r == nil {
		return nil
	}
	at := len(filled(d.Readings[:i])) // the fit was given no empty sets
	var list []Residual
	for _, s := range r.Sets {
		if s.Set == at {
			list = residuals(s.Residuals)
		}
	}
	if r.Verify != nil {
		for _, s := range r.Verify.Sets {
			if s.Set == at {
				list = residuals(s.Off)
			}
		}
	}
	if len(list) != len(d.Readings[i].Values) {
		return nil
	}
	for _, o := range r.Outliers {
		if o.Set == at {
			list[o.Reading].Out = true
		}
	}
	return list
}

func residuals(off []float64) []Residual {
	list := make([]Residual, len(off))
	for i, x := range off {
		list[i].Off = x
	}
	return list
}

// FitCount says how many of the study's readings a fit is made of, and of how many.
func FitCount(d *study.Document, r *engine.FitResult) (used, of int) {
	for _, s := range r.Sets {
		used += len(s.Residuals)
	}
	used -= len(r.Outliers)
	for _, set := range d.Readings {
		of += len(set.Values)
	}
	return used, of
}

// Spacers is the advice of a fit for one side in whole steps.
type Spacers struct {
	engine.AdviceResult
	Parameter string
	Step      float64 // file units; 0 for any value
	Count     int     // whole steps from the car as measured, signed
	Outside   bool    // the whole step lies outside the band of the best value
}

// SpacersOf returns what a fit advises for a side; ok is false where it does not.
func SpacersOf(a *study.Advise, r *engine.FitResult, side string) (s Spacers, ok bool) {
	advice, ok := r.Advice[side]
	if !ok || a == nil {
		return Spacers{}, false
	}
	return Spacers{advice, a.Parameter, a.Step, advice.Step, advice.Value < min(advice.Low, advice.High) || advice.Value > max(advice.Low, advice.High)}, true
}

// SpacersText says what a fit advises in whole spacers: "11 spacers of 1/16 in, the ball
// below"; of a part that no spacers move in steps, "+3 steps of 1 mm".
func SpacersText(d *study.Document, s *Spacers) string {
	n, mm := NumbersOf(d), d.Units.Millimetres
	spaced := s.Parameter == MainParameters[0]
	switch {
	case s.Step == 0:
		return n.Length(mm(s.Value))
	case s.Count == 0:
		return "as measured"
	case !spaced:
		return number.Signed(float64(s.Count), number.Decimal(float64(s.Count), 0)) + " steps of " + n.Spacer(mm(s.Step))
	case s.Count < 0:
		return number.Count(-s.Count, "spacer") + " of " + n.Spacer(mm(s.Step)) + ", the ball below"
	}
	return number.Count(s.Count, "spacer") + " of " + n.Spacer(mm(s.Step)) + ", the ball above"
}

// Spacer writes the thickness of a spacer, in inches as the fraction that it is.
func (n Numbers) Spacer(mm float64) string {
	if n.Units == study.Inch {
		text := number.Fraction(n.Units.FromMillimetres(mm), finestSpacer) + " in"
		if x, err := n.ParseLength(text); err == nil && math.Abs(x-mm) < spacerSlack {
			return text
		}
	}
	return n.Travel(mm)
}

const (
	finestSpacer = 64    // parts of an inch
	spacerSlack  = 0.001 // mm, by which a thickness is a fraction all the same
)
