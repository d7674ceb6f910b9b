package optimize

import (
	"math"
	"math/rand/v2"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Tolerance is how far a parameter of a car that is made may be off.
type Tolerance struct {
	Parameter solver.Parameter
	Sides     solver.Selection
	Distribution
	// PerCar says that both sides of a car are off alike; else each by itself.
	PerCar bool

	stated int // index of the series' tolerance that an independent quantity comes of
}

// Key returns the parameter's key with the side it is restricted to.
func (t *Tolerance) Key() string { return t.Parameter.Key + t.Sides.Suffix() }

// floats reports whether the tolerance is that of a setpoint which is not held.
func (t *Tolerance) floats(held solver.Hold) bool {
	set, err := solver.ParseHold([]string{t.Parameter.Key})
	return err == nil && set&held == 0
}

// Series is a series of cars, all of one design but for their tolerances, and
// what is asked of them. Static toe is re-set on each car, as an alignment does,
// unless [Judge.LeaveToe] says that it stays as built.
type Series struct {
	Judge
	Changes    []solver.Change // of the candidate that is made
	Tolerances []Tolerance
	// Limit is the largest toe change, less target, that passes; 0 asks for no
	// yield.
	Limit   solver.Angle
	Measure Measure // of each car's curve that is held against Limit
	Seed    uint64
}

// Check returns an error that says what the series lacks.
func (s *Series) Check() error {
	if len(s.errors()) == 0 {
		return nlp.ProblemErrorf("no tolerance is given of the wheels judged: name at least one parameter and its plus-minus")
	}
	for i := range s.Tolerances {
		t := &s.Tolerances[i]
		if !(t.Spread >= 0) || math.IsInf(t.Spread, 0) {
			return nlp.ProblemErrorf("tolerance of %s is %g, must be 0 or more", t.Key(), t.Spread)
		}
		if t.floats(s.held()) {
			return nlp.ProblemErrorf("tolerance of %s: the cars' %s is not re-set, but comes of their parts; state the tolerances of those", t.Key(), t.Parameter.Key)
		}
	}
	err := solver.CheckOnce(len(s.Tolerances), func(i int) (*solver.Parameter, solver.Selection) {
		return &s.Tolerances[i].Parameter, s.Tolerances[i].Sides
	})
	if err != nil {
		return err
	}
	return s.Judge.Check()
}

// errors are the independent quantities of a series: a tolerance of both sides
// that is not the same within a car is one for each side. Those of a wheel that is not
// judged, and does not share a beam with one that is, are left out.
func (s *Series) errors() []Tolerance {
	var out []Tolerance
	add := func(t Tolerance) {
		if s.Sides == solver.BothSides || t.Sides == solver.BothSides || t.Sides == s.Sides || s.Base.Design().Kind.CommonPoints != nil {
			out = append(out, t)
		}
	}
	for i, t := range s.Tolerances {
		t.stated = i
		if t.PerCar || t.Sides != solver.BothSides || !t.Parameter.Sided() {
			add(t)
			continue
		}
		for _, side := range solver.Sides {
			t.Sides = selectionOf([]solver.Side{side})
			add(t)
		}
	}
	return out
}

// draw sets xs to what car number n is off by. Every car has a generator of its
// own, so that a series is the same however it is divided among workers.
func (s *Series) draw(errs []Tolerance, n int, xs []float64) {
	var pcg rand.PCG
	pcg.Seed(s.Seed, uint64(n))
	r := rand.New(&pcg)
	for i := range errs {
		xs[i] = errs[i].Draw(r)
	}
}
