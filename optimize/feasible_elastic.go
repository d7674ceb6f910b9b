package optimize

import (
	"math"

	"toewright/optimize/nlp"
)

// elastic is the [Model] of the least breach: one variable more than the search has, by
// which each of the soft limits may be broken, and which is all that is made small.
type elastic struct {
	*toeModel
	soft   int // limits that may be broken: the first of the model's
	unused []float64
}

func newElastic(p *ToeSearch, soft, hard []int) *elastic {
	some := *p
	some.Limits = nil
	for _, k := range append(append([]int(nil), soft...), hard...) {
		some.Limits = append(some.Limits, p.Limits[k])
	}
	e := &elastic{toeModel: newToeModel(&some), soft: len(soft)}
	e.unused = make([]float64, e.toeModel.Size().Residuals)
	return e
}

// Size implements [Model].
func (e *elastic) Size() nlp.Size {
	s := e.toeModel.Size()
	return nlp.Size{Variables: s.Variables + 1, Residuals: 1, Limits: s.Limits}
}

// Evaluate implements [Model]. It returns false where a car does not reach the window or
// has no value for a limit.
func (e *elastic) Evaluate(x []float64, v *nlp.Values) bool {
	n := len(x) - 1
	if !e.residuals(x[:n], &nlp.Values{R: e.unused}) || !e.writeLimits(x[:n], v) {
		return false
	}
	v.R[0] = x[n]
	if v.JR != nil {
		v.JR.Zero()
		v.JR.Set(0, n, 1)
	}
	row := 0
	for range e.scenarios {
		for k := range e.limits {
			for range e.limits[k].rows() {
				give := 0.0
				if k < e.soft {
					give = 1
				}
				v.G[row] -= give * x[n]
				if v.JG != nil {
					v.JG.Set(row, n, -give)
				}
				row++
			}
		}
	}
	return true
}

// Shortfall is the car that comes nearest to the ends of the window.
type Shortfall struct {
	// Values are its parameters; nil where none of the cars tried gets to travel 0 of a
	// scenario at all. Fault then says why the first of them does not.
	Values []float64
	Fault  error
	// Bump and Droop are what it reaches of the window, mm, positive, in its scenario of
	// least travel; the ends of the window where it reaches those.
	Bump, Droop float64
	Link        string // that ends the travel first
	Scenario    string // of least travel
}

// short looks for the car that reaches most of the window, by the lesser share of bump
// and droop in any scenario; where none gets anywhere it is said why of the car that the
// search starts from.
func (f *feasible) short(seed uint64) *Shortfall {
	points, u := nlp.NewHalton(len(f.p.Free), seed), make([]float64, len(f.p.Free))
	best, most := []float64(nil), math.Inf(-1)
	share := func(u []float64) float64 {
		f.count++
		got, _ := f.m.share(f.p.fromUnit(u))
		return got
	}
	for i := 0; i < feasibleDraws && f.ctx.Err() == nil; i++ {
		points.Point(i, u)
		if got := share(u); got > most {
			best, most = append(best[:0], u...), got
		}
	}
	if best == nil {
		_, out := f.m.share(f.p.startInside())
		return &out
	}
	d := nlp.NelderMead{Value: func(u []float64) float64 { return -share(u) }, Edge: robustEdge, Evaluations: feasibleTries * len(u), Gain: nlp.LimitSlack}
	best, _ = d.Run(f.ctx, best)
	x := f.p.fromUnit(best)
	_, out := f.m.share(x)
	out.Values = x
	return &out
}

// share returns the least share of the window's ends that a car reaches; -Inf for one
// that does not get to travel 0 in a scenario.
func (m *toeModel) share(x []float64) (float64, Shortfall) {
	least, out := math.Inf(1), Shortfall{}
	for i := range m.scenarios {
		s := &m.scenarios[i]
		if m.sweep(s, x, false); m.fault != nil {
			return math.Inf(-1), Shortfall{Scenario: s.Name, Fault: m.fault}
		}
		for _, side := range m.wheels {
			r := &m.curves[side].Reach
			droop, bump := -m.travels[0], m.travels[len(m.travels)-1]
			got, at := 1.0, Shortfall{Bump: bump, Droop: droop, Scenario: s.Name}
			if r.BumpEnds {
				at.Bump, at.Link = r.Bump, r.BumpLink
				got = math.Min(got, r.Bump/bump)
			}
			if r.DroopEnds {
				at.Droop = r.Droop
				if r.Droop/droop < got {
					at.Link, got = r.DroopLink, r.Droop/droop
				}
			}
			if got < least {
				least, out = got, at
			}
		}
	}
	return least, out
}
