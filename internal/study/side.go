package study

import "toewright/solver"

// Side names a side of the car, as seen by its driver.
type Side string

// The sides.
const (
	Left  Side = "left"
	Right Side = "right"
)

// sides lists both, left first.
var sides = [2]Side{Left, Right}

// Solver returns the side as the solver has it, and the left one where none is stated: of
// a point of neither side, or of readings of a car whose sides are alike.
func (s Side) Solver() solver.Side {
	if s == Right {
		return solver.Right
	}
	return solver.Left
}
