package optimize

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"toewright/optimize/nlp"
)

// Feasibility says what of a search's limits, and of its window, can be had within the
// bounds of its parameters, as far as searches from a few starts find.
type Feasibility struct {
	// Values reach the window in all scenarios and hold all limits; nil where none were
	// found that do.
	Values []float64
	// Conflicts are the limits that are in each other's way; none where Values are.
	Conflicts []Conflict
	// Short is the nearest to the window; nil where some car reaches it.
	Short       *Shortfall
	Evaluations int // of cars in all scenarios
}

// Conflict is limits of which no values found hold all, while there are values that hold
// all but any one of them.
type Conflict struct {
	Limits []int // of the search, ascending
	// Values are the nearest that can be had: they break the worst of these limits least,
	// counted in scales, and hold all limits that are in no conflict. Nil where no car
	// has a value for the limits at all.
	Values []float64
	States []LimitState // of Limits in their order at Values, in one scenario after the other
	// Breach is by how much the worst of Limits is broken there, in scales; infinite
	// without Values.
	Breach float64
}

const (
	// feasibleDraws is how many points spread over the box are looked at before any
	// search begins.
	feasibleDraws = 64
	// feasibleStarts is from how many of the best points searches begin.
	feasibleStarts = 3
	// feasibleSteps bounds the steps of each.
	feasibleSteps = 40
	// feasibleTries bounds, by parameters, the evaluations by the method without
	// derivatives, for limits that have kinks.
	feasibleTries = 60
)

// Feasible looks for values that reach the window and hold all limits, whatever the toe
// change. It costs a fraction of a search. Seed is that of the starts. An error is of a
// search that lacks something, or of the context.
func (p *ToeSearch) Feasible(ctx context.Context, seed uint64) (*Feasibility, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	f := &feasible{ctx: ctx, p: p, m: newToeModel(p), tried: map[string]bool{}}
	f.look(seed)
	out := &Feasibility{}
	switch {
	case len(f.found) == 0:
		out.Short = f.short(seed)
	default:
		f.settle(out)
	}
	out.Evaluations = f.count
	return out, ctx.Err()
}

// feasible is the state of one call of Feasible.
type feasible struct {
	ctx   context.Context
	p     *ToeSearch
	m     *toeModel
	found []stand         // cars that reach the window
	tried map[string]bool // what was searched for already
	count int
}

// stand is how cars stand to the limits.
type stand struct {
	x      []float64
	breach []float64 // of each limit the largest of all scenarios, in scales; negative where held, +Inf without a value
}

// of returns the largest breach of some limits, at least 0: 0 where all are held.
func (s *stand) of(limits []int) float64 {
	worst := 0.0
	for _, k := range limits {
		if b := s.breach[k]; !(b <= nlp.LimitSlack) {
			worst = math.Max(worst, b)
		}
	}
	return worst
}

// look tries the start and points spread over the box until one holds everything.
func (f *feasible) look(seed uint64) {
	all := f.all()
	if s, ok := f.try(f.p.startInside()); ok && s.of(all) == 0 {
		return
	}
	points, u := nlp.NewHalton(len(f.p.Free), seed), make([]float64, len(f.p.Free))
	for i := 0; i < feasibleDraws && f.ctx.Err() == nil; i++ {
		points.Point(i, u)
		if s, ok := f.try(f.p.fromUnit(u)); ok && s.of(all) == 0 {
			return
		}
	}
}

// startInside returns the base car's own values moved into the ranges.
func (p *ToeSearch) startInside() []float64 {
	x := p.Start()
	for k, v := range p.variables() {
		x[k] = v.FromUnit(v.ToUnit(x[k]))
	}
	return x
}

// fromUnit returns a point of the unit box, moved into it, in the parameters' units.
func (p *ToeSearch) fromUnit(u []float64) []float64 {
	x := make([]float64, len(u))
	for k, v := range p.variables() {
		x[k] = v.FromUnit(math.Max(0, u[k]))
	}
	return x
}

// all lists all limits.
func (f *feasible) all() []int {
	list := make([]int, len(f.p.Limits))
	for k := range list {
		list[k] = k
	}
	return list
}

// try takes down how the cars at x stand to the limits; false where one does not reach
// the window.
func (f *feasible) try(x []float64) (*stand, bool) {
	f.count++
	v := nlp.Values{R: make([]float64, f.m.Size().Residuals)}
	if !f.m.residuals(x, &v) {
		return nil, false
	}
	s := stand{x, make([]float64, len(f.p.Limits))}
	for k := range s.breach {
		s.breach[k] = math.Inf(-1)
	}
	if len(f.p.Limits) > 0 {
		for i := range f.m.scenarios {
			car, err := f.m.base.Assemble(f.m.changes(&f.m.scenarios[i], x), f.m.scenarios[i].Hold)
			if err != nil {
				return nil, false
			}
			for k := range f.p.Limits {
				l := &f.p.Limits[k]
				s.breach[k] = math.Max(s.breach[k], l.breach(l.value(car, f.m.scenarios[i].From, f.m.ws)))
			}
		}
	}
	f.found = append(f.found, s)
	return &f.found[len(f.found)-1], true
}

// breach returns by how many scales a value breaks the limit, below 0 where it holds it
// with room; infinite for none.
func (l *Limit) breach(v float64) float64 {
	if math.IsNaN(v) {
		return math.Inf(1)
	}
	return -l.Room(v) / l.Scale
}

// settle finds values that hold all limits, or the limits in each other's way.
func (f *feasible) settle(out *Feasibility) {
	rest := f.all()
	for len(rest) > 0 && f.least(rest, nil).of(rest) > 0 && f.ctx.Err() == nil {
		core := f.core(rest)
		out.Conflicts = append(out.Conflicts, Conflict{Limits: core})
		rest = slices.DeleteFunc(rest, func(k int) bool { return slices.Contains(core, k) })
	}
	if len(out.Conflicts) == 0 {
		out.Values = slices.Clone(f.least(rest, nil).x)
	}
	for i := range out.Conflicts {
		f.nearest(&out.Conflicts[i], rest)
	}
}

// core returns those of limits that cannot be held, one left out of which the others
// can: it drops, one by one, those without which the rest still cannot.
func (f *feasible) core(limits []int) []int {
	core := slices.Clone(limits)
	for _, k := range limits {
		less := slices.DeleteFunc(slices.Clone(core), func(j int) bool { return j == k })
		if len(less) > 0 && f.least(less, nil).of(less) > 0 {
			core = less
		}
	}
	return core
}

// nearest sets the values of a conflict, beside which the rest is held.
func (f *feasible) nearest(c *Conflict, rest []int) {
	s := f.least(c.Limits, rest)
	if c.Breach = s.of(c.Limits); math.IsInf(c.Breach, 1) {
		return
	}
	c.Values = slices.Clone(s.x)
	for i, st := range f.m.limitStates(s.x) {
		if slices.Contains(c.Limits, i%len(f.p.Limits)) {
			c.States = append(c.States, st)
		}
	}
}

// order sorts what was found by the breach of the hard limits, then of the soft ones.
func (f *feasible) order(soft, hard []int) {
	slices.SortStableFunc(f.found, func(a, b stand) int {
		return cmp.Or(cmp.Compare(a.of(hard), b.of(hard)), cmp.Compare(a.of(soft), b.of(soft)))
	})
}

// least returns the point that breaks the worst of the soft limits least while it holds
// the hard ones, by searches from the best points known, none where one already holds
// them all.
func (f *feasible) least(soft, hard []int) *stand {
	f.order(soft, hard)
	best := &f.found[0]
	key := fmt.Sprint(soft, hard)
	if f.tried[key] || best.of(hard) == 0 && best.of(soft) == 0 {
		return best
	}
	f.tried[key] = true
	for _, s := range slices.Clone(f.found[:min(feasibleStarts, len(f.found))]) {
		if f.ctx.Err() != nil {
			break
		}
		f.polish(&s, soft, hard)
	}
	f.order(soft, hard)
	if s := f.found[0]; s.of(hard) > 0 || s.of(soft) > 0 {
		f.descend(s.x, soft, hard)
		f.order(soft, hard)
	}
	return &f.found[0]
}

// polish takes down where a local search from s ends.
func (f *feasible) polish(s *stand, soft, hard []int) {
	e := newElastic(f.p, soft, hard)
	slack := s.of(soft)
	if math.IsInf(slack, 1) || math.IsInf(s.of(hard), 1) {
		return // of a car that has no value there are no slopes
	}
	p := nlp.Problem{Model: e, Variables: append(f.p.variables(), nlp.Variable{Name: "breach", Max: math.Max(slack, nlp.LimitSlack)})}
	local, err := nlp.NewLocalSearch(f.ctx, p, &Settings{Iterations: feasibleSteps})
	if err != nil {
		return
	}
	o, spent, ok := local.From(append(slices.Clone(s.x), slack))
	f.count += spent
	if ok {
		f.try(o.X[:len(s.x)])
	}
}

// descend takes down where the method without derivatives ends from x.
func (f *feasible) descend(x []float64, soft, hard []int) {
	d := nlp.NelderMead{
		Value: func(u []float64) float64 {
			s, ok := f.try(f.p.fromUnit(u))
			if !ok {
				return math.Inf(1)
			}
			const hardFirst = 1e3 // a breach of a hard limit counts as so many of a soft one
			return s.of(soft) + hardFirst*s.of(hard)
		},
		Edge: robustEdge, Evaluations: feasibleTries * len(x), Gain: nlp.LimitSlack,
	}
	u := make([]float64, len(x))
	for k, v := range f.p.variables() {
		u[k] = v.ToUnit(x[k])
	}
	kept := len(f.found)
	best, _ := d.Run(f.ctx, u)
	f.found = f.found[:kept]
	f.try(f.p.fromUnit(best))
}
