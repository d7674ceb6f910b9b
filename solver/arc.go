package solver

import "math"

// Limits of following a path by its own length.
const (
	arcStep     = 2.0   // first and largest step, mm by [distance]'s measure
	arcFloor    = 1e-5  // smallest step, mm
	arcSteps    = 20000 // most steps before giving up
	arcTrust    = 0.2   // largest correction as a share of the step
	foldLimit   = 1e-12 // |ds/d(length)| that counts as the turning point
	arcBisects  = 200   // bound on the search for a turning point or a target
	arcResidual = 1e-10 // as residualLimit
)

// deadlock says where a path ended.
type deadlock struct {
	s    float64 // path parameter of the end
	link int     // index of the constraint that carries the load there
	lost bool    // the path could not be followed, though no lock was found
}

// arcScratch is the memory of a path followed by its own length: the unknowns
// are the state and, last, the path parameter.
type arcScratch struct {
	lu            factors
	m             matrix
	x, next       column // point on the path; scaled unknowns are x·weight
	tangent, turn column // unit tangents at x and at next
	border        column // last row of m
	rhs           column
	det           float64 // of m with the tangent for its last row, where that was taken last
}

// weight returns the length that one unit of unknown i counts for.
func weight(i, n int) float64 {
	if i < n && rotational(i) {
		return lever
	}
	return 1
}

// advanceByArc goes on to s = target where plain steps fail: along the length of
// the solution curve, which passes a lock without trouble, so that the lock is
// found as the point where s turns back.
func (t *tracer) advanceByArc(target float64) *deadlock {
	direction := math.Copysign(1, target-t.s)
	a := &t.arc
	a.x = t.q
	a.x[t.n] = t.s
	if !t.arcTangent(&a.x, nil, direction, &a.tangent) {
		return t.lost()
	}
	step := math.Min(arcStep, math.Max(arcFloor, math.Abs(target-t.s)))
	det, growth := a.det, 0.0
	for range arcSteps {
		ok := t.arcTo(step) && t.arcTangent(&a.next, &a.tangent, direction, &a.turn)
		if !ok || !foreseen(det, a.det, growth*step) {
			if step /= 2; step < arcFloor {
				return t.lost()
			}
			continue
		}
		det, growth = a.det, (a.det-det)/step
		if (a.next[t.n]-target)*direction >= 0 {
			return t.arcFinish(step, target)
		}
		if a.turn[t.n]*direction <= 0 {
			return t.arcFold(step, target, direction)
		}
		a.x, a.tangent = a.next, a.turn
		t.settle(&a.x)
		step = math.Min(arcStep, step*1.5)
	}
	return t.lost()
}

// lost reports a path that could not be followed from where the tracer stands.
func (t *tracer) lost() *deadlock {
	return &deadlock{s: t.s, link: t.loaded(), lost: true}
}

// settle moves the tracer to the point x of the path, its slope unknown.
func (t *tracer) settle(x *column) {
	t.q, t.s = *x, x[t.n]
	t.q[t.n] = 0
	t.forget()
}

// bordered sets a.m to the Jacobian by state and parameter at x over the row
// a.border, columns scaled, and t.f to the residual.
func (t *tracer) bordered(x *column) bool {
	a, n := &t.arc, t.n
	t.guess = *x
	t.guess[n] = 0
	t.sys.linearise(&t.guess, x[n], &t.f, &t.jac, &t.rate)
	for i := range n {
		for j := range n {
			a.m[i][j] = t.jac[i][j] / weight(j, n)
		}
		a.m[i][n] = t.rate[i]
	}
	for j := range n + 1 {
		a.m[n][j] = a.border[j]
	}
	return a.lu.factor(&a.m, n+1) && a.lu.sound()
}

// arcTangent sets out to the unit tangent of the solution curve at x, scaled, on
// the side of prev or, where prev is nil, towards s growing in direction.
func (t *tracer) arcTangent(x, prev *column, direction float64, out *column) bool {
	n := t.n
	a := &t.arc
	if prev != nil {
		a.border = *prev
	} else {
		a.border = column{}
		a.border[n] = 1
	}
	if !t.bordered(x) && !t.anyBorder(x) {
		return false
	}
	a.rhs = column{}
	a.rhs[n] = 1
	a.lu.solve(&a.rhs, out)
	norm := 1 / math.Sqrt(product(out, out, n+1))
	if prev == nil {
		norm = math.Copysign(norm, out[n]*direction)
	}
	for i := range n + 1 {
		out[i] *= norm
	}
	// A row's part across the tangent lies in the span of the others.
	a.det = a.lu.det / product(&a.border, out, n+1)
	return !math.IsNaN(a.det) && !math.IsInf(norm, 0)
}

// anyBorder looks for a unit row that makes the bordered matrix regular: at a
// turning point itself the parameter's own row does not.
func (t *tracer) anyBorder(x *column) bool {
	for i := range t.n {
		t.arc.border = column{}
		t.arc.border[i] = 1
		if t.bordered(x) {
			return true
		}
	}
	return false
}

// arcTo sets a.next to the solution at the given length along the tangent from
// a.x, in the plane square to the tangent. It returns false where the corrections
// do not stay small beside the step.
func (t *tracer) arcTo(step float64) bool {
	a, n := &t.arc, t.n
	a.next = a.x
	for i := range n + 1 {
		a.next[i] += step * a.tangent[i] / weight(i, n)
	}
	total := 0.0
	a.border = a.tangent
	for range maxCorrections {
		if !t.bordered(&a.next) {
			return false
		}
		small := largest(&t.f, n) <= arcResidual
		a.rhs = t.f
		a.rhs[n] = 0
		a.lu.solve(&a.rhs, &a.rhs)
		size := 0.0
		for i := range n + 1 {
			size = math.Max(size, math.Abs(a.rhs[i]))
			a.next[i] -= a.rhs[i] / weight(i, n)
		}
		total += size
		if !(total <= arcTrust*math.Abs(step)+1e-9) {
			return false
		}
		if small {
			return true
		}
	}
	return false
}

// arcFinish brings the tracer to s = target, which lies within step of a.x.
func (t *tracer) arcFinish(step, target float64) *deadlock {
	a, n := &t.arc, t.n
	lo, hi := 0.0, step
	flo, fhi := a.x[n]-target, a.next[n]-target
	for range arcBisects {
		if math.Abs(fhi) <= 1e-9 || hi-lo <= 1e-13 {
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

// arcFold finds the turning point of s within step of a.x, and moves the tracer
// to target if that lies before it. It returns the lock otherwise.
func (t *tracer) arcFold(step, target, direction float64) *deadlock {
	a, n := &t.arc, t.n
	lo, hi := 0.0, step
	flo, fhi := a.tangent[n]*direction, a.turn[n]*direction
	mid := hi
	for range arcBisects {
		mid = lo + (hi-lo)*clamp(flo/(flo-fhi), 0.1, 0.9)
		if !t.arcTo(mid) || !t.arcTangent(&a.next, &a.tangent, direction, &a.turn) {
			return t.lost()
		}
		f := a.turn[n] * direction
		if math.Abs(f) <= foldLimit || hi-lo <= 1e-10 {
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

// clamp returns x, kept within lo..hi; NaN becomes lo.
func clamp(x, lo, hi float64) float64 {
	if !(x >= lo) {
		return lo
	}
	return math.Min(x, hi)
}

// loaded returns the constraint that carries the greatest load where the tracer
// stands, if the path is pushed on: at a lock the links balance each other
// without any push, and the largest share names the link that ends the travel.
func (t *tracer) loaded() int {
	t.sys.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	loads := &t.step
	t.leftNull(loads)
	link, size := 0, -1.0
	for i := range t.n {
		if s := math.Abs(loads[i]); s > size {
			link, size = i, s
		}
	}
	return link
}

// leftNull sets x to the unit vector that the transposed Jacobian all but sends
// to zero, by inverse iteration: the loads in which the links balance each other.
func (t *tracer) leftNull(x *column) {
	for i := range t.n {
		for j := range t.n {
			t.jac[i][j] /= weight(j, t.n)
		}
		t.jac[i][i] += 1e-12 // keeps the factors regular at the lock itself
		x[i] = 1
	}
	if !t.lu.factor(&t.jac, t.n) {
		return
	}
	for range 4 {
		t.lu.solve(x, x)
		t.lu.solveTransposed(x, x)
		size := largest(x, t.n)
		for i := range t.n {
			x[i] /= size
		}
	}
}
