package solver

import "math"

// Tolerances of the path follower. Lengths are in mm.
const (
	// residualLimit is the largest error of a link length in a solved pose.
	// Rounding alone leaves about 1e-12 on lengths of a metre.
	residualLimit = 1e-10
	// chordLimit is the correction below which the old factors still converge
	// to rounding in one more step: the error they leave is its square over a
	// radius of some 100 mm.
	chordLimit = 1e-3
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
	sys system
	n   int

	s     float64 // where the path stands
	q     state   // solution there
	slope state   // dq/ds there, valid if sloped
	sign  float64 // of det dF/dq there
	known bool    // slope and sign are valid

	before struct { // the solution before this one, for prediction
		s        float64
		q, slope state
		known    bool
	}

	guess         state // of the step being tried
	f, rate, step column
	jac           matrix
	lu            factors
	arc           arcScratch
}

// start puts the tracer at s = 0 with the solution q of sys.
func (t *tracer) start(sys system, q *state) {
	t.sys, t.n = sys, sys.size()
	t.s, t.q = 0, *q
	t.known, t.before.known = false, false
}

// orient evaluates slope and sign where the path stands. It returns false at a
// singular position.
func (t *tracer) orient() bool {
	if t.known {
		return true
	}
	t.sys.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, t.n) {
		return false
	}
	t.adoptSlope()
	t.sign = t.lu.sign
	t.known = true
	return true
}

// adoptSlope sets the slope from the factors and the rate column at hand.
func (t *tracer) adoptSlope() {
	t.lu.solve(&t.rate, &t.slope)
	for i := range t.n {
		t.slope[i] = -t.slope[i]
	}
}

// advance follows the path to s = target. It returns nil there, or what ended the
// path on the way; the tracer then stands at the end.
func (t *tracer) advance(target float64) *deadlock {
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
	t.predict(next, q)
	for i := range t.n {
		t.step[i] = q[i] - t.q[i]
	}
	moved := distance(&t.step, t.n)
	if !t.correct(q, next, trust*moved+trustFloor) {
		return false
	}
	t.accept(q, next)
	return true
}

// predict sets q to the solution expected at s = next: the cubic through the two
// last solutions and their slopes, or the tangent where there is but one.
func (t *tracer) predict(next float64, q *state) {
	h := next - t.s
	b := &t.before
	if !b.known {
		for i := range t.n {
			q[i] = t.q[i] + h*t.slope[i]
		}
		return
	}
	w := t.s - b.s
	x := h / w
	// Hermite basis on [before, now], continued to 1+x.
	u := 1 + x
	h00 := (1 + 2*u) * x * x
	h10 := u * x * x * w
	h11 := u * u * x * w
	for i := range t.n {
		q[i] = t.q[i] + h00*(b.q[i]-t.q[i]) + h10*b.slope[i] + h11*t.slope[i]
	}
}

// correct brings q onto the solution at s by Newton's method. It returns false
// where it does not converge within reach of the first guess or where the
// determinant has changed its sign: beyond a lock.
func (t *tracer) correct(q *state, s, reach float64) bool {
	total := 0.0
	for k := range maxCorrections {
		t.sys.linearise(q, s, &t.f, &t.jac, &t.rate)
		if !t.lu.factor(&t.jac, t.n) {
			return false
		}
		size := t.improve(q)
		total += size
		if !(total <= reach) {
			return false
		}
		if size <= chordLimit || k == maxCorrections-1 {
			return t.lu.sign == t.sign && t.polish(q, s)
		}
	}
	return false
}

// improve takes one correction with the factors at hand and returns its size.
func (t *tracer) improve(q *state) float64 {
	t.lu.solve(&t.f, &t.step)
	for i := range t.n {
		q[i] -= t.step[i]
	}
	return distance(&t.step, t.n)
}

// polish corrects q with the factors at hand until the residual vanishes.
func (t *tracer) polish(q *state, s float64) bool {
	for range maxCorrections {
		t.sys.residual(q, s, &t.f)
		if largest(&t.f, t.n) <= residualLimit {
			return true
		}
		t.improve(q)
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

// accept moves the tracer to the solution q at s. The factors at hand are those
// of a point within [chordLimit] of it: near enough for a prediction.
func (t *tracer) accept(q *state, s float64) {
	b := &t.before
	b.s, b.q, b.slope, b.known = t.s, t.q, t.slope, t.known
	t.s, t.q = s, *q
	t.adoptSlope()
	t.known = true
}
