package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// circle is the path of an arm's ball joint about the arm's two pivots.
type circle struct {
	centre Vec
	axis   Vec     // of length 1, from the first pivot to the second
	radial Vec     // from the centre to the ball, static
	side   Vec     // axis × radial
	r2     float64 // radius, squared
}

// newCircle returns the path of the ball at p about the pivots a and b. It is not
// a number where the pivots are one point.
func newCircle(a, b, p Vec) circle {
	k := r3.Unit(r3.Sub(b, a))
	d := r3.Sub(p, a)
	centre := axpy(r3.Dot(k, d), k, a)
	radial := r3.Sub(p, centre)
	return circle{centre: centre, axis: k, radial: radial, side: r3.Cross(k, radial), r2: r3.Dot(radial, radial)}
}

// at returns the ball's place when the arm is turned by the angle whose half has
// the tangent u, and its derivative by u.
func (c *circle) at(u float64) (p, rate Vec) {
	k := 1 / (1 + u*u)
	r := axpy((1-u*u)*k, c.radial, r3.Scale(2*u*k, c.side))
	return r3.Add(c.centre, r), r3.Scale(2*k, r3.Cross(c.axis, r))
}

// turnTo returns the tangent of half the arm's angle when its ball stands at p.
func (c *circle) turnTo(p Vec) float64 {
	d := r3.Sub(p, c.centre)
	return r3.Dot(d, c.side) / (c.r2 + r3.Dot(d, c.radial))
}

// swing returns the vector p square to the unit axis k whose squared length is h2
// and whose product with d is c: the way from the centre of a circle to where the
// circle meets a sphere about the end of d. There are two such vectors; branch,
// +1 or -1, is the sign of p·(k×d).
//
// slack is the square of the sine of the angle, seen along k, between p and d: 0
// where the two are in line and the two solutions become one, negative or not a
// number where the sphere is out of reach.
func swing(k, d Vec, h2, c, branch float64) (p Vec, slack float64) {
	across := axpy(-r3.Dot(k, d), k, d)
	d2 := r3.Dot(across, across)
	square := h2*d2 - c*c
	inv := 1 / d2
	p = axpy(c*inv, across, r3.Scale(branch*math.Sqrt(square)*inv, r3.Cross(k, across)))
	return p, square * inv / h2
}

// branchOf returns the branch of [swing] on which p stands.
func branchOf(k, d, p Vec) float64 { return math.Copysign(1, r3.Dot(p, r3.Cross(k, d))) }
