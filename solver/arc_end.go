package solver

import "math"

// arcFold finds the turning point of s within step of a.x, and moves the tracer
// to target if that lies before it. It returns the lock otherwise.
func (t *tracer) arcFold(step, target, direction float64) *deadlock {
	a, n := &t.arc, t.n
	lo, hi := 0.0, step
	flo, fhi := a.tangent[n]*direction, a.turn[n]*direction
	mid := hi
	for range endBisects {
		mid = lo + (hi-lo)*clamp(flo/(flo-fhi), 0.1, 0.9)
		if !t.arcTo(mid) || !t.arcTangent(&a.next, &a.tangent, direction, &a.turn) {
			return t.lost()
		}
		f := a.turn[n] * direction
		if math.Abs(f) <= foldLimit || hi-lo <= foldWidth {
			break
		}
		if f > 0 {
			lo, flo = mid, f
		} else {
			hi, fhi = mid, f
		}
	}
	if (a.next[n]-target)*direction >= 0 {
		return t.arcFinish(mid, target)
	}
	t.settle(&a.next)
	return &deadlock{s: t.s, link: t.loaded()}
}

// arcFinish brings the tracer to s = target, which lies within step of a.x.
func (t *tracer) arcFinish(step, target float64) *deadlock {
	a, n := &t.arc, t.n
	lo, hi := 0.0, step
	flo, fhi := a.x[n]-target, a.next[n]-target
	for range endBisects {
		if math.Abs(fhi) <= targetLimit || hi-lo <= targetWidth {
			break
		}
		mid := lo + (hi-lo)*clamp(flo/(flo-fhi), 0.05, 0.95)
		if !t.arcTo(mid) {
			return t.lost()
		}
		if f := a.next[n] - target; f*flo > 0 {
			lo, flo = mid, f
		} else {
			hi, fhi = mid, f
		}
	}
	if !t.arcTo(hi) {
		return t.lost()
	}
	t.settle(&a.next)
	t.s = target
	t.snap()
	return nil
}

// snap polishes the state at exactly t.s; at a lock, where plain Newton has
// nothing to divide by, it leaves the state as it is: within 1e-9 mm of s.
func (t *tracer) snap() {
	t.guess = t.q
	if t.orientSign() && t.polish(&t.guess, t.s) {
		t.q = t.guess
	}
}

// polish corrects q with the factors at hand until the residual vanishes.
func (t *tracer) polish(q *state, s float64) bool {
	for range maxCorrections {
		t.sys.residual(q, s, &t.f)
		if largest(&t.f, t.n) <= residualLimit {
			return true
		}
		t.lu.solve(&t.f, &t.step)
		for i := range t.n {
			q[i] -= t.step[i]
		}
	}
	return false
}

// orientSign factors the Jacobian where the tracer stands.
func (t *tracer) orientSign() bool {
	t.sys.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	return t.lu.factor(&t.jac, t.n)
}

// clamp returns x, kept within lo..hi; NaN becomes lo.
func clamp(x, lo, hi float64) float64 {
	if !(x >= lo) {
		return lo
	}
	return math.Min(x, hi)
}
