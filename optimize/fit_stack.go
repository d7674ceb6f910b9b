package optimize

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// stack is a fitted car with a parameter that is sought: its toe changes as a
// function of one value.
type stack struct {
	f     *FittedCar
	q     *AdviceRequest
	bench *bench
}

func (f *FittedCar) stack(q *AdviceRequest, sides solver.Selection) (*stack, error) {
	j := q.Window
	j.Sides = sides
	b, err := f.bench(&j)
	return &stack{f: f, q: q, bench: b}, err
}

// parts returns the parts with the value sought among them.
func (s *stack) parts(value float64) []solver.Change {
	out := append([]solver.Change(nil), s.q.Beside...)
	return append(out, solver.Change{Parameter: s.q.Parameter, Sides: s.q.Sides, Value: value})
}

// fitted returns the value in the last set of readings of the side.
func (s *stack) fitted() float64 {
	c := solver.Change{Parameter: s.q.Parameter, Sides: s.q.Sides}
	value := 0.0
	if c.Parameter.Absolute {
		value = settingIn(s.f.Base, nil, &c)
	}
	for i := range s.f.Sets {
		set := &s.f.Sets[i]
		if set.Side != s.bench.sides[0] {
			continue
		}
		value = 0
		if c.Parameter.Absolute {
			value = settingIn(s.f.Base, set.Changes, &c)
			continue
		}
		for _, k := range set.Changes {
			if k.Parameter.Key == c.Parameter.Key && k.Sides.Includes(set.Side) {
				value += k.Value
			}
		}
	}
	return value
}

// car assembles the fitted car at a value.
func (s *stack) car(value float64) (*solver.Axle, error) {
	return s.f.Base.Assemble(s.f.Car(s.parts(value)), s.bench.Hold)
}

// at returns the curve at a value with its rates by the unknowns, and in the last
// column by the value.
func (s *stack) at(value float64) (*ratedCurve, error) {
	return s.bench.rated(s.f.Car(s.parts(value)), s.f.Unknowns, s.seed())
}

// seed is the parameter sought.
func (s *stack) seed() []solver.Change {
	return []solver.Change{{Parameter: s.q.Parameter, Sides: s.q.Sides}}
}

// slope returns the derivative by the value of half the mean square; NaN where
// there is no such car.
func (s *stack) slope(value float64) float64 {
	c, err := s.bench.rated(s.f.Car(s.parts(value)), nil, s.seed())
	if err != nil {
		return math.NaN()
	}
	return floats.Dot(c.change, nlp.Column(c.rates, 0)) / float64(len(c.change))
}

// scanSteps is the number of steps in which the bounds are searched for the
// valley of the best value: 4 mm over the widest usual ones, where the curvature
// of a toe curve changes over some 100 mm.
const scanSteps = 30

// bottom is where the best value of a stack lies.
type bottom struct {
	best float64
	// low to high is as far as the car can be built and makes the window, at most a
	// scan's step to either side.
	low, high float64
	edge      bool // the best value would rather lie beyond
}

// search returns where the best value within the bounds lies.
func (s *stack) search() (bottom, error) {
	best, lowest := math.NaN(), math.Inf(1)
	step := (s.q.Max - s.q.Min) / scanSteps
	for i := range scanSteps + 1 {
		v := s.q.Min + float64(i)*step
		if f := s.bench.figures(s.f.Car(s.parts(v))); float64(f.RMS) < lowest {
			best, lowest = v, float64(f.RMS)
		}
	}
	if math.IsNaN(best) {
		return bottom{}, nlp.ProblemErrorf("%s cannot be fitted anywhere from %s to %s on the fitted car so that it makes the window", s.q.Parameter.Key, s.q.shown(s.q.Min), s.q.shown(s.q.Max))
	}
	b := s.refine(best, step)
	if s.slope(b.low) == 0 && s.slope(b.high) == 0 {
		return bottom{}, nlp.ProblemErrorf("%s changes no toe of the fitted car; ask for advice on a part that does, as a ball's height", s.q.Parameter.Key)
	}
	return b, nil
}

// refine returns the bottom of the valley within a step of v.
func (s *stack) refine(v, step float64) bottom {
	lo, hi := s.inward(math.Max(v-step, s.q.Min), v), s.inward(math.Min(v+step, s.q.Max), v)
	switch {
	case lo < v && s.slope(lo) >= 0 || lo == v && s.slope(v) > 0:
		return bottom{lo, lo, hi, true}
	case hi > v && s.slope(hi) <= 0 || hi == v && s.slope(v) < 0:
		return bottom{hi, lo, hi, true}
	}
	return bottom{nlp.Root(s.slope, lo, hi, valueRounding), lo, hi, false}
}

// valueRounding is how near to the bottom of the valley a value is sought, mm or
// radians: far below what any shop can do.
const valueRounding = 1e-9

// inwardSteps is the number of halvings by which the edge of what can be built is
// found: to a billionth of the bounds.
const inwardSteps = 25

// inward returns the value nearest to v, on the way to the sound value, at which
// the car can be built and makes the window.
func (s *stack) inward(v, sound float64) float64 {
	if s.sound(v) {
		return v
	}
	for range inwardSteps {
		if mid := (v + sound) / 2; s.sound(mid) {
			sound = mid
		} else {
			v = mid
		}
	}
	return sound
}

// sound reports whether the car can be built at a value and makes the window.
func (s *stack) sound(value float64) bool { return !math.IsNaN(s.slope(value)) }

// whole returns the whole number of steps nearest to the best value, within the
// bounds, with which the car can be built and makes the window.
func (s *stack) whole(best float64) (float64, error) {
	step := s.q.Step
	near := math.Round(best / step)
	for _, n := range []float64{near, near + math.Copysign(1, best/step-near)} {
		n = math.Min(math.Max(n, math.Ceil(s.q.Min/step)), math.Floor(s.q.Max/step))
		if s.sound(n * step) {
			return n, nil
		}
	}
	return 0, nlp.ProblemErrorf("%s is best at %s, but with the whole steps of %s beside it the fitted car does not make the window; ask for a smaller step", s.q.Parameter.Key, s.q.shown(best), s.q.shown(step))
}

// bandStep is the step, as a share of the bounds' distance, in which the slopes
// are differenced: a tenth of a millimetre over the usual ones.
const bandStep = 1e-3

// band sets the standard deviation and the band of the best value. The slope of
// the mean square is zero there, so that the best value moves with an unknown by
// the slope's derivative over its curvature. Both are differences of exact
// slopes, taken along the value: the terms of second order count, since the curve
// that is left at the best value is not small.
func (s *stack) band(a *Advice, room *bottom) {
	h := math.Min(bandStep*(s.q.Max-s.q.Min), (room.high-room.low)/2)
	x := math.Min(math.Max(a.Best, room.low+h), room.high-h)
	up := s.slopes(x + h)
	floats.Sub(up, s.slopes(x-h))
	n := len(s.f.Unknowns)
	curvature := up[n]
	a.Low, a.High, a.SD = s.q.Min, s.q.Max, math.Inf(1)
	if !(curvature > 0) {
		return
	}
	floats.Scale(-1/curvature, up)
	a.Rates = up[:n]
	a.SD = s.f.sdOf(a.Rates)
	free := a.Best
	if a.AtBound {
		free -= s.slope(a.Best) / (curvature / (2 * h))
	}
	low, high := s.q.Min, s.q.Max
	if a.AtBound { // the value would rather lie beyond what can be built, or asked for
		if free < a.Best {
			low = a.Best
		} else {
			high = a.Best
		}
	}
	a.Low = math.Min(math.Max(free-bandSD*a.SD, low), high)
	a.High = math.Min(math.Max(free+bandSD*a.SD, low), high)
}

// slopes returns the derivatives of half the mean square by the unknowns and by
// the value; NaN where there is no such car.
func (s *stack) slopes(value float64) []float64 {
	out := make([]float64, len(s.f.Unknowns)+1)
	c, err := s.at(value)
	if err != nil {
		floats.AddConst(math.NaN(), out)
		return out
	}
	rows := float64(len(c.change))
	for i, change := range c.change {
		floats.AddScaled(out, change/rows, c.rates.RawRowView(i))
	}
	return out
}
