package solver

import "fmt"

// staticPath is the system of a unit's static position on the way from the car
// as the points stand, s=0, to the car as it is changed to, s=1.
type staticPath struct {
	u          *unit
	before     []dvec // points before parts are exchanged
	after      []dvec // and after
	conditions []condition
	place      placement
	c          configuration
}

func (p *staticPath) size() int { return len(p.conditions) }

// put places the points for q at the blend s.
func (p *staticPath) put(q *state, s dual) {
	p.c.blend = s
	for i := range p.before {
		p.place.from[i] = p.before[i].plus(p.after[i].less(p.before[i]).times(s))
	}
	p.place.set(q)
	p.place.place(&p.c)
}

func (p *staticPath) residual(q *state, s float64, f *column) {
	p.put(q, constant(s))
	for i, k := range p.conditions {
		f[i] = k.value(&p.c).v
	}
}

func (p *staticPath) linearise(q *state, s float64, f *column, jac *matrix, rate *column) {
	p.put(q, dual{s, 1})
	for i, k := range p.conditions {
		x := k.value(&p.c)
		f[i], rate[i] = x.v, x.d
	}
	for k := range p.conditions {
		p.place.rates(k, &p.c)
		for i, c := range p.conditions {
			jac[i][k] = c.value(&p.c).d
		}
	}
}

// StaticError reports a static position that a car's parts and setpoints cannot
// meet.
type StaticError struct {
	Side  Side
	Axle  bool   // the whole axle rather than one side
	Link  string // what stands in the way
	Share float64
}

func (e *StaticError) Error() string {
	where := e.Side.String() + " side"
	if e.Axle {
		where = "axle"
	}
	return fmt.Sprintf("solver: %s: the static position cannot be met: %s stands in the way after %.0f %% of the change; make the change smaller or hold fewer setpoints",
		where, e.Link, 100*e.Share)
}

// solve returns the unknowns of the static position; t lends its memory, and lu, nil where
// there are none, are the factors of the car as measured.
func (p *staticPath) solve(t *tracer, lu *factors) (state, error) {
	if lu != nil {
		if q, ok := p.solveNear(lu, t); ok {
			return q, nil
		}
	}
	var q state
	var f column
	p.residual(&q, 1, &f)
	if largest(&f, p.size()) <= residualLimit {
		return q, nil
	}
	t.start(p, &q)
	if end := t.advance(1); end != nil {
		return q, &StaticError{Side: p.u.wheels[0].side, Axle: p.u.beam,
			Link: p.conditions[end.link].link(), Share: end.s}
	}
	return t.q, nil
}
