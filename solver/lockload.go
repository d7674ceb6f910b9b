package solver

import "math"

// Inverse iteration for the loads at a lock.
const (
	loadShift  = 1e-12 // keeps the factors regular at the lock itself; lengths are in mm
	loadRounds = 4     // each gains as many digits as the shift leaves between the two least loads
)

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

// leftNull sets x to a vector that the transposed Jacobian all but sends to zero, by
// inverse iteration: the loads in which the links balance each other. Its length is
// none in particular: in so few rounds it cannot grow out of what a number holds.
func (t *tracer) leftNull(x *column) {
	for i := range t.n {
		for j := range t.n {
			t.jac[i][j] /= weight(j, t.n)
		}
		t.jac[i][i] += loadShift
		x[i] = 1
	}
	if !t.lu.factor(&t.jac, t.n) {
		return
	}
	for range loadRounds {
		t.lu.solve(x, x)
		t.lu.solveTransposed(x, x)
	}
}
