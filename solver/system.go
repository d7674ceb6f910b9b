package solver

import "math"

// state holds the unknowns of a pose in one global chart: the Gibbs vector of
// the body's rotation from its static position, the displacement of its
// reference point in mm, and for a solid axle the two kingpin turns. All are 0
// in the static position.
type state = column

// system is a family of square nonlinear equations F(q, s) = 0, where s runs
// along a path that the system itself keeps: travel and steering for a sweep,
// the way from the old to the new set-up for a static position. Residuals are
// in mm.
type system interface {
	// size returns the number of equations and unknowns.
	size() int
	// residual sets f to F(q, s).
	residual(q *state, s float64, f *column)
	// linearise sets f to F(q, s), jac to its derivative by q, and rate to
	// its derivative by s.
	linearise(q *state, s float64, f *column, jac *matrix, rate *column)
}

// directSystem is a system that solves its own linear equations.
type directSystem interface {
	system
	// newton sets step to Newton's correction at the point q, s and slope to
	// dq/ds there, and returns det dF/dq. It returns 0 where the
	// point is singular or so near it that a general solution must say.
	newton(q *state, s float64, step, slope *state) float64
}

// lever is the length, in mm, that makes a change of a Gibbs vector comparable
// with a displacement when the two are measured as one distance: about that of
// a ball joint from a wheel centre, doubled as the Gibbs vector halves the angle.
const lever = 500.0

// rotational reports whether unknown i of a state is a turn rather than a
// displacement.
func rotational(i int) bool { return i < 3 || i >= 6 }

// distance returns the size of the change d of a state of n unknowns, in mm:
// the largest displacement, a turn counting by [lever].
func distance(d *column, n int) float64 {
	turn := max(math.Abs(d[0]), math.Abs(d[1]), math.Abs(d[2])) // max keeps NaN
	move := max(math.Abs(d[3]), math.Abs(d[4]))
	for i := 5; i < n; i++ {
		if rotational(i) {
			turn = max(turn, math.Abs(d[i]))
		} else {
			move = max(move, math.Abs(d[i]))
		}
	}
	return max(lever*turn, move)
}
