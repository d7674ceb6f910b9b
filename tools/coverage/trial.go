package main

import (
	"context"
	"errors"
	"math"
	"slices"

	"toewright/optimize"
	"toewright/solver"
)

// errUnusable is said of a simulated car that no one could drive: it does not make
// the window, or no height of the part within the registry's bounds is best.
var errUnusable = errors.New("the simulated car cannot be used")

// spacer is the thickness of a spacer, mm.
const spacer = 1.5

// outcome is what one advice came to.
type outcome struct {
	Failed    bool    // no advice was given
	Miss      float64 // advised less true best, mm
	Width     float64 // of the 90 % band, mm
	Covered   bool    // the band holds the true best
	Curve     float64 // RMS error of the predicted toe change at the stack read last, mm on the gauge
	Outliers  int     // readings left out
	Explained bool    // the verdict
}

// session is a car in the workshop: what was read of it, and its true best.
type session struct {
	*car
	best   float64
	fit    optimize.GaugeFit
	height float64 // of the stack read last
}

// newSession returns a car whose hardpoints are off by sd, fitted with priors
// that say so.
func (k *kindOfCar) newSession(ctx context.Context, seed uint64, n int, sd float64) (*session, error) {
	c := k.draw(seed, n, sd)
	best, ok := c.best(ctx)
	if !ok {
		return nil, errUnusable
	}
	return &session{car: c, best: best, fit: optimize.GaugeFit{Base: k.base, Priors: k.priors(sd)}}, nil
}

// priors are those that the cars are drawn from.
func (k *kindOfCar) priors(sd float64) []optimize.FitPrior {
	var out []optimize.FitPrior
	for _, p := range solver.Parameters(k.base.Design()) {
		if p.Coordinate() && !p.OfGear() {
			out = append(out, optimize.FitPrior{Parameter: p, SD: sd})
		}
	}
	return out
}

// measure reads the car with a stack of the given height.
func (s *session) measure(height float64, off conditions) error {
	sets, err := s.read(height, off)
	if err != nil {
		return err
	}
	s.height = height
	s.fit.Sets = append(s.fit.Sets, sets...)
	return nil
}

// advise fits what was read and judges the advice against the true best.
func (s *session) advise(ctx context.Context) (*optimize.FittedCar, *optimize.Advice, outcome) {
	f, a, err := s.adviceOf(ctx)
	if err != nil {
		return nil, nil, outcome{Failed: true}
	}
	out := outcome{
		Miss: a.Best - s.best, Width: a.High - a.Low,
		Covered:  a.Low <= s.best && s.best <= a.High,
		Outliers: len(f.Outliers), Explained: f.Verdict() == optimize.Explained,
	}
	out.Curve, err = s.curveError(f)
	out.Failed = err != nil
	return f, a, out
}

func (s *session) adviceOf(ctx context.Context) (*optimize.FittedCar, *optimize.Advice, error) {
	travels, err := s.travels()
	if err != nil {
		return nil, nil, err
	}
	f, err := optimize.FitCar(ctx, &s.fit)
	if err != nil {
		return nil, nil, err
	}
	as, err := f.Advise(&optimize.AdviceRequest{
		Parameter: s.part, Step: spacer, Min: s.part.Min, Max: s.part.Max,
		Window: optimize.Judge{Travels: travels},
	})
	if err != nil {
		return nil, nil, err
	}
	return f, as[0], nil
}

// curveError returns the RMS error of the fitted car's toe change with the stack
// that was read last.
func (s *session) curveError(f *optimize.FittedCar) (float64, error) {
	travels, err := s.travels()
	if err != nil {
		return 0, err
	}
	p, err := f.Predict(&optimize.Judge{Travels: travels, Sides: s.judged()}, s.stackOf(s.height))
	if err != nil {
		return 0, err
	}
	curves, err := s.sweep(s.height, travels, 0)
	if err != nil {
		return 0, err
	}
	sum, k := 0.0, 0
	for _, side := range s.sides() {
		at := curves[side].Positions
		home := at[len(at)/2].Toe
		for i := range at {
			e := gaugeBase * float64(at[i].Toe-home-p.Change[k])
			sum += e * e
			k++
		}
	}
	return math.Sqrt(sum / float64(k)), nil
}

// stacks is a car read with no spacers, and then with the stack advised.
type stacks struct {
	One, Two outcome
	Spoilt   outcome // after two, one reading a gross error
	Moved    float64 // by the gross error: change of the advice, mm
	Named    bool    // whether it was named
}

// tryStacks simulates car number n of a kind.
func (k *kindOfCar) tryStacks(ctx context.Context, seed uint64, n int, sd float64) (*stacks, error) {
	s, err := k.newSession(ctx, seed, n, sd)
	if err != nil {
		return nil, err
	}
	if err := s.measure(0, conditions{}); err != nil {
		return nil, err
	}
	failed := outcome{Failed: true}
	t := &stacks{Two: failed, Spoilt: failed}
	var next, last *optimize.Advice
	if _, next, t.One = s.advise(ctx); next == nil || s.measure(next.Value, conditions{}) != nil {
		return t, nil
	}
	if _, last, t.Two = s.advise(ctx); last != nil {
		s.spoil(ctx, last, t)
	}
	return t, nil
}

// Size of the gross error, in standard deviations of a reading: 0.5 to 2 mm.
const grossLeast, grossMost = 10, 40

// spoil falsifies one reading and fits again.
func (s *session) spoil(ctx context.Context, sound *optimize.Advice, t *stacks) {
	set := s.r.IntN(len(s.fit.Sets))
	s.fit.Sets = slices.Clone(s.fit.Sets)
	spoilt := &s.fit.Sets[set]
	spoilt.Readings = slices.Clone(spoilt.Readings)
	i := s.r.IntN(len(spoilt.Readings))
	size := gaugeNoise * (grossLeast + (grossMost-grossLeast)*s.r.Float64())
	spoilt.Readings[i].Value += math.Copysign(size, s.r.Float64()-0.5)
	f, a, out := s.advise(ctx)
	t.Spoilt = out
	if a == nil {
		return
	}
	t.Moved = math.Abs(a.Best - sound.Best)
	t.Named = slices.ContainsFunc(f.Outliers, func(o optimize.Outlier) bool { return o.Set == set && o.Reading == i })
}

// Standard deviations of the zeros that are freed: of travel and of a rack's
// centre, mm.
const travelZeroSD, steerZeroSD = 2.0, 1.0

// pitmanArm is the arm, mm, at which a pitman's angle moves like a rack.
const pitmanArm = 150.0

// zeros is a car whose travel was read from a wrong height, with the steering off
// centre.
type zeros struct {
	Held  outcome // the fit does not know
	Freed outcome // it may find both
}

// tryZeros simulates car number n of a kind at two stacks.
func (k *kindOfCar) tryZeros(ctx context.Context, seed uint64, n int, sd float64) (*zeros, error) {
	s, err := k.newSession(ctx, seed, n, sd)
	if err != nil {
		return nil, err
	}
	steer := steerZeroSD
	switch k.base.Design().Gear.Kind {
	case solver.NoGear:
		steer = 0
	case solver.CentreLink:
		steer /= pitmanArm
	}
	off := conditions{travelZero: travelZeroSD * s.r.NormFloat64(), steerZero: steer * s.r.NormFloat64()}
	for _, height := range []float64{0, zerosStack} {
		if err := s.measure(height, off); err != nil {
			return nil, err
		}
	}
	var z zeros
	_, _, z.Held = s.advise(ctx)
	s.fit.TravelZero, s.fit.SteerZero = travelZeroSD, steer
	_, _, z.Freed = s.advise(ctx)
	return &z, nil
}

// zerosStack is the height of the second stack of a car with wrong zeros, mm.
const zerosStack = -6.0
