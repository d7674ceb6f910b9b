package optimize

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Aim is a second aim of a trade-off: how far a car is from something wanted beside
// its toe. It is one smooth number or several, each by how much it misses, with its
// sign; their size as a whole is what is kept small.
type Aim struct {
	Name  string
	Scale float64 // a difference of the aim that matters, > 0
	// Misses is how many numbers Of writes. The aim is the largest of their sizes,
	// over all scenarios.
	Misses int
	// Of writes by how much a car misses what is wanted, in the aim's unit; NaN
	// where the car has no such result. Where by is not nil it sets a row of rates for each
	// miss to its derivatives by the parameters of these tangents of the car, too; it
	// returns false where it does not, and they are differenced. Nil is the distance of the
	// parts from the base car's: the root of the sum of squares of all free parameters that
	// are changes, mm and radians alike.
	Of func(car *solver.Axle, ws *solver.Workspace, misses []float64, by *solver.Tangents, rates [][]float64) bool
}

// check returns an error for an aim that cannot be measured.
func (a *Aim) check(p *ToeSearch) error {
	switch {
	case !(a.Scale > 0):
		return nlp.ProblemErrorf("aim %s has scale %g, must be positive", a.Name, a.Scale)
	case a.Of != nil && a.Misses < 1:
		return nlp.ProblemErrorf("aim %s measures nothing", a.Name)
	case a.Of == nil && len(a.parts(p)) == 0:
		return nlp.ProblemErrorf("aim %s is the distance from the base car's parts, and no part is free", a.Name)
	}
	return nil
}

// AimAt returns an aim at values of the search's parameters, in the aim's unit; NaN
// where there is none.
func (p *ToeSearch) AimAt(a *Aim, x []float64) float64 {
	return newAimModel(&TradeOff{ToeSearch: *p, Aim: *a}, newToeModel(p)).at(x)
}

// parts lists the free parameters that are changes of the base car.
func (a *Aim) parts(p *ToeSearch) (list []int) {
	for i := range p.Free {
		if !p.Free[i].Parameter.Absolute {
			list = append(list, i)
		}
	}
	return list
}

// aimModel is the [Model] of an aim: its residuals are the misses, in the aim's
// scale, and its limits those of the search.
type aimModel struct {
	aim   *Aim
	toe   *toeModel
	parts []int       // of a distance: the free parameters that count
	spare *nlp.Values // of the toe, which the aim does not ask for
	car   solver.Axle // looked at last
	rates [][]float64 // of a car's misses
	// Of misses that have no rates:
	differences *differences
}

func newAimModel(t *TradeOff, m *toeModel) *aimModel {
	a := &aimModel{aim: &t.Aim, toe: m}
	if t.Aim.Of == nil {
		a.parts = t.Aim.parts(&t.ToeSearch)
	}
	for range t.Aim.Misses {
		a.rates = append(a.rates, make([]float64, len(t.Free)))
	}
	a.differences = newDifferences(t.Free, func(x, out []float64) bool { return a.misses(x, out, nil) })
	return a
}

// rows returns how many misses there are in all.
func (a *aimModel) rows() int {
	if a.aim.Of == nil {
		return len(a.parts)
	}
	return a.aim.Misses * len(a.toe.scenarios)
}

// Size implements [Model].
func (a *aimModel) Size() nlp.Size {
	size := a.toe.Size()
	size.Residuals = a.rows()
	return size
}

// Evaluate implements [Model]. A car that does not reach the window has no aim: a
// design is one of the search's.
func (a *aimModel) Evaluate(x []float64, v *nlp.Values) bool {
	if a.spare == nil {
		all := nlp.NewValues(a.toe.Size())
		a.spare = &nlp.Values{R: all.R}
	}
	a.spare.G, a.spare.JG = v.G, v.JG
	return a.toe.Evaluate(x, a.spare) && a.misses(x, v.R, v.JR)
}

// objective returns how the misses become the aim.
func (a *aimModel) objective() nlp.Objective {
	if a.aim.Of == nil {
		return nlp.Objective{Measure: RMS}
	}
	return nlp.Objective{Measure: Peak}
}

// misses writes those at x, in the aim's scale, and their derivatives where they are wanted.
func (a *aimModel) misses(x, out []float64, rates *mat.Dense) bool {
	if a.aim.Of == nil {
		for i, k := range a.parts {
			out[i] = x[k] / a.aim.Scale
			if rates != nil {
				clear(rates.RawRowView(i))
				rates.Set(i, k, 1/a.aim.Scale)
			}
		}
		return true
	}
	rated := true
	for i := range a.toe.scenarios {
		ok, exact := a.missesIn(i, x, out, rates)
		if !ok {
			return false
		}
		rated = rated && exact
	}
	return rates == nil || rated || a.differences.write(x, rates)
}

// missesIn is misses of a set-up; exact says whether it has written the derivatives.
func (a *aimModel) missesIn(i int, x, out []float64, rates *mat.Dense) (ok, exact bool) {
	s := &a.toe.scenarios[i]
	a.toe.cars++
	if a.toe.base.Reassemble(&a.car, solver.BothSides, a.toe.changes(s, x), s.Hold, nil) != nil {
		return false, false
	}
	var by *solver.Tangents
	if rates != nil {
		by, _ = a.car.Tangents(a.toe.seeds) // where there are none the misses are differenced
	}
	first := i * a.aim.Misses
	part := out[first : first+a.aim.Misses]
	exact = a.aim.Of(&a.car, a.toe.ws, part, by, a.rates) && by != nil
	for k := range part {
		part[k] /= a.aim.Scale
		if !exact {
			continue
		}
		for j, d := range a.rates[k] {
			rates.Set(first+k, j, d/a.aim.Scale)
		}
	}
	return true, exact
}

// at returns the aim at x, in its unit; NaN where there is none.
func (a *aimModel) at(x []float64) float64 {
	misses := make([]float64, a.rows())
	if !a.misses(x, misses, nil) {
		return math.NaN()
	}
	return a.size(misses) * a.aim.Scale
}

// size returns that of misses as a whole.
func (a *aimModel) size(misses []float64) float64 {
	if a.aim.Of == nil {
		return floats.Norm(misses, 2)
	}
	return floats.Norm(misses, math.Inf(1))
}
