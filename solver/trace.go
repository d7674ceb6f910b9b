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
	// stride is the longest step, in mm by [distance]'s measure, a seventh of a
	// radian or so: a longer one may pass over a lock.
	stride = 60.0
	// surprise is the largest difference, as a share, of the determinant from what
	// was expected after a step, dwindling the least share of it that must be left.
	surprise  = 0.5
	dwindling = 0.3
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

	node        // where the path stands; slope and det are valid if known
	trail trail // the solutions before, for prediction
	known bool

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

// orient evaluates slope and determinant where the path stands. It returns false at a
// singular position.
func (t *tracer) orient() bool {
	if t.known {
		return true
	}
	t.det = t.newton(&t.q, t.s)
	t.known = t.det != 0
	if t.known {
		t.slope = t.tangent
	}
	return t.known
}

// newton sets t.step to Newton's correction at the point q, s and t.tangent to
// the slope of the path there. It returns det dF/dq, 0 at a singular
// point.
func (t *tracer) newton(q *state, s float64) float64 {
	if t.direct != nil {
		if det := t.direct.newton(q, s, &t.step, &t.tangent); det != 0 {
			return det
		}
	}
	t.sys.linearise(q, s, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, t.n) || !t.lu.sound() {
		return 0
	}
	t.lu.solve(&t.f, &t.step)
	t.lu.solve(&t.rate, &t.tangent)
	for i := range t.n {
		t.step[i], t.tangent[i] = -t.step[i], -t.tangent[i]
	}
	return t.lu.det
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
		step = t.within(stride, step)
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

// within returns the step, shortened so that the path moves by no more than limit
// along its slope. The travel itself counts as a slope of 1.
func (t *tracer) within(limit, step float64) float64 {
	if size := math.Abs(step) * (1 + distance(&t.slope, t.n)); size > limit {
		step *= limit / size
	}
	return step
}

// foreseen reports whether a determinant that is now may become next in a step in
// which it was expected to change by as much as given. It would not where the
// step has passed a lock. Nor where it has passed the place where two branches
// all but meet: there the determinant falls towards 0 and, on the other branch,
// rises again with the same sign.
func foreseen(now, next, change float64) bool {
	return next/now >= dwindling && math.Abs(next-now-change) <= surprise*math.Abs(now)
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
	det := t.correct(q, next, trust*moved+trustFloor)
	if !foreseen(t.det, det, t.trail.growth(&t.node)*(next-t.s)) {
		return false
	}
	t.trail.add(&t.node)
	t.node = node{s: next, q: *q, slope: t.tangent, det: det}
	return true
}

// correct brings q onto the solution at s by Newton's method and returns the
// determinant there: 0 where it does not converge within reach of the first
// guess.
func (t *tracer) correct(q *state, s, reach float64) float64 {
	total := 0.0
	for range maxCorrections {
		det := t.newton(q, s)
		if det == 0 {
			return 0
		}
		for i := range t.n {
			q[i] += t.step[i]
		}
		size := distance(&t.step, t.n)
		total += size
		if !(total <= reach) {
			return 0
		}
		if size <= settled {
			return det
		}
	}
	return 0
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
