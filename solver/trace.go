package solver

import "math"

// Tolerances of the path follower. Lengths are in mm.
const (
	// residualLimit is the largest error of a link length in a solved pose.
	// Rounding alone leaves about 1e-12 on lengths of a metre.
	residualLimit = 1e-10
	// settled is the correction, in mm, with which a pose counts as solved. What
	// remains is its square over a link's length, below rounding, and what the
	// factors at hand say of the pose is good to 1e-8.
	settled = 1e-6
	// trust is the largest correction, as a share of the step predicted, with
	// which a step still counts as following its branch.
	trust = 0.35
	// trustFloor is a correction too small to mistake one branch for another.
	trustFloor = 1e-3
	// maxCorrections bounds the Newton corrections of one step.
	maxCorrections = 8
	// halvings bounds the refusals of a step before the path is followed by
	// its own length instead.
	halvings = 5
)

// tracer follows the solution of a system from where it is known, so that every
// pose is on the branch of the static position and never on its mirror image.
// It holds all scratch memory of a solve.
type tracer struct {
	sys    system
	direct directSystem // sys, where it is one
	n      int

	node          // where the path stands; its slope is valid if known
	trail trail   // the solutions before, for prediction
	sign  float64 // of det dF/dq here
	known bool    // slope and sign are valid

	guess, tangent state // of the step being tried
	f, rate, step  column
	jac            matrix
	lu             factors
	arc            arcScratch
	closed         closedTrace // the fast way, while it lasts
}

// start puts the tracer at s = 0 with the solution q of sys.
func (t *tracer) start(sys system, q *state) {
	t.sys, t.n = sys, sys.size()
	t.direct, _ = sys.(directSystem)
	t.s, t.q = 0, *q
	t.forget()
	t.closed.start(sys, q)
}

// forget drops what is known of the path beside where it stands.
func (t *tracer) forget() { t.known, t.trail.n = false, 0 }

// orient evaluates slope and sign where the path stands. It returns false at a
// singular position.
func (t *tracer) orient() bool {
	if t.known {
		return true
	}
	t.sign = t.newton(&t.q, t.s)
	t.known = t.sign != 0
	if t.known {
		t.slope = t.tangent
	}
	return t.known
}

// newton sets t.step to Newton's correction at the point q, s and t.tangent to
// the slope of the path there. It returns the sign of det dF/dq, 0 at a singular
// point.
func (t *tracer) newton(q *state, s float64) float64 {
	if t.direct != nil {
		if sign := t.direct.newton(q, s, &t.step, &t.tangent); sign != 0 {
			return sign
		}
	}
	t.sys.linearise(q, s, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, t.n) {
		return 0
	}
	t.lu.solve(&t.f, &t.step)
	t.lu.solve(&t.rate, &t.tangent)
	for i := range t.n {
		t.step[i], t.tangent[i] = -t.step[i], -t.tangent[i]
	}
	return t.lu.sign
}

// advance follows the path to s = target. It returns nil there, or what ended the
// path on the way; the tracer then stands at the end.
func (t *tracer) advance(target float64) *deadlock {
	if t.advanceClosed(target) {
		return nil
	}
	refused := 0
	step := target - t.s
	for t.s != target {
		if !t.orient() || refused > halvings {
			return t.advanceByArc(target)
		}
		if math.Abs(target-t.s) <= math.Abs(step)*(1+1e-9) {
			step = target - t.s
		}
		if t.try(t.s + step) {
			refused = max(refused-1, 0)
			step *= 2
			continue
		}
		refused++
		step /= 2
	}
	return nil
}

// try takes one step to s = next. It returns false, and leaves the tracer where
// it was, where the step is not clearly on the same branch.
func (t *tracer) try(next float64) bool {
	q := &t.guess
	t.trail.predict(&t.node, next, t.n, q)
	for i := range t.n {
		t.step[i] = q[i] - t.q[i]
	}
	moved := distance(&t.step, t.n)
	if !t.correct(q, next, trust*moved+trustFloor) {
		return false
	}
	t.trail.add(&t.node)
	t.s, t.q, t.slope = next, *q, t.tangent
	return true
}

// correct brings q onto the solution at s by Newton's method. It returns false
// where it does not converge within reach of the first guess or where the
// determinant has changed its sign: beyond a lock.
func (t *tracer) correct(q *state, s, reach float64) bool {
	total := 0.0
	for range maxCorrections {
		sign := t.newton(q, s)
		if sign == 0 {
			return false
		}
		for i := range t.n {
			q[i] += t.step[i]
		}
		size := distance(&t.step, t.n)
		total += size
		if !(total <= reach) {
			return false
		}
		if size <= settled {
			return sign == t.sign
		}
	}
	return false
}

// largest returns the largest magnitude among the first n of f; NaN wins.
func largest(f *column, n int) float64 {
	m := 0.0
	for i := range n {
		if a := math.Abs(f[i]); !(a <= m) {
			m = a
		}
	}
	return m
}
