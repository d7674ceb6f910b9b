package model

import (
	"math"
	"slices"

	"toewright/solver"
)

// AlikeToe is how much the toe changes of the two sides may differ, in radians, for the
// sides to be alike: far less than any gauge shows, and more than rounding.
const AlikeToe = 1e-7

// Symmetric reports whether a car's wheels toe alike at every travel.
func Symmetric(c *Car) bool {
	l, r := &c.Curves[solver.Left], &c.Curves[solver.Right]
	if len(l.Positions) != len(r.Positions) {
		return false
	}
	for i := range l.Positions {
		a, b := &l.Positions[i], &r.Positions[i]
		if a.Travel != b.Travel || math.Abs(float64(a.Toe-b.Toe)) > AlikeToe {
			return false
		}
	}
	return true
}

// ShownSides returns the sides whose curves differ: both, or the left for both where the
// wheels of all cars toe alike.
func ShownSides(cars []*Car) []solver.Side {
	if slices.ContainsFunc(cars, func(c *Car) bool { return !Symmetric(c) }) {
		return solver.Sides[:]
	}
	return solver.Sides[:1]
}
