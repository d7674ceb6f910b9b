package solver

import "math"

// Limits of following a path by its own length.
const (
	arcStep     = 2.0   // first and largest step, mm by [distance]'s measure
	arcFloor    = 1e-5  // smallest step, mm
	arcSteps    = 20000 // most steps before giving up
	arcTrust    = 0.2   // largest correction as a share of the step
	arcSlack    = 1e-9  // correction allowed whatever the step, mm: rounding on the shortest
	arcResidual = 1e-10 // as residualLimit
)

// Limits of the search along a step for where the path ends.
const (
	endBisects  = 200   // bound on it, far beyond what halving takes
	targetLimit = 1e-9  // distance to the target that counts as there, in s
	targetWidth = 1e-13 // bracket of the target, mm, below which there is nothing to halve
	foldLimit   = 1e-12 // |ds/d(length)| that counts as the turning point
	foldWidth   = 1e-10 // bracket of the turning point, mm: s is flat there, to its square
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
