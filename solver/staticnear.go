package solver

const (
	// nearStep is the longest first step, in mm by [distance]'s measure, of a static
	// position that counts as near the car as measured: ten times what a shop's tolerances
	// come to, and far from where branches meet.
	nearStep = 5.0
	// nearShrink is the share of the step before that a step may have. The equations
	// then differ from the measured car's by no more on the way, so that the solution
	// is on its branch.
	nearShrink = 0.1
	// nearError is the error, in mm, with which a static position counts as solved: that of
	// Newton's method where its last correction is [settled].
	nearError = 1e-13
)

// nearFactors are the factors of a unit's equations in the car as measured, for each set of
// setpoints that was asked for last.
type nearFactors [2]struct {
	known, sound bool
	hold         Hold
	lu           factors
}

// near returns the factors for unit i; nil where the car as measured stands at a lock. It
// uses the path.
func (w *staticWork) near(i int, hold Hold) *factors {
	n := &w.measured[i]
	if hold = w.held(hold, w.cs); !n.known || n.hold != hold {
		p, t := w.prepare(i, nil, hold), &w.tracer
		var q state
		p.linearise(&q, 1, &t.f, &t.jac, &t.rate)
		n.known, n.hold = true, hold
		n.sound = n.lu.factor(&t.jac, p.size()) && n.lu.sound()
	}
	if !n.sound {
		return nil
	}
	return &n.lu
}

// solveNear returns the unknowns of the path where the car is near the one as measured,
// whose factors are given: to first order, and then by ever smaller corrections with the
// same factors. Each costs the equations once, their derivatives cost them once for each
// unknown. It returns false where the car is not near.
func (p *staticPath) solveNear(lu *factors, t *tracer) (q state, ok bool) {
	p.residual(&q, 1, &t.f)
	if largest(&t.f, p.size()) <= residualLimit {
		return q, true
	}
	last := nearStep / nearShrink
	for k := range maxCorrections {
		if k > 0 {
			p.again(&q, &t.f)
		}
		lu.solve(&t.f, &t.step)
		size := distance(&t.step, p.size())
		if !(size <= nearShrink*last) {
			return q, false
		}
		for i := range p.size() {
			q[i] -= t.step[i]
		}
		if k > 0 && size*size <= nearError*last {
			return q, true
		}
		last = size
	}
	return q, false
}

// again sets f to the residuals for q where those of another q were the last thing that was
// asked, at the same blend: points have no rates, and stand where they did before they are
// placed.
func (p *staticPath) again(q *state, f *column) {
	p.place.set(q)
	p.place.placeValues(&p.c)
	for i, k := range p.conditions {
		f[i] = k.value(&p.c).v
	}
}
