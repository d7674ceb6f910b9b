package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// rotation is a proper orthogonal matrix, by rows.
type rotation [3]Vec

// cayley returns the rotation whose Gibbs vector is g: the rotation axis times
// the tangent of half the angle. It needs no trigonometry, is orthogonal to
// rounding for every g, and reaches any rotation but a half turn, which no
// suspension makes.
func cayley(g Vec) (r rotation) {
	r.cayley(g)
	return r
}

// cayley sets r to what the function of that name returns.
func (r *rotation) cayley(g Vec) {
	k := 2 / (1 + g.X*g.X + g.Y*g.Y + g.Z*g.Z)
	c := k - 1 // (1-g²)/(1+g²)
	x, y, z := k*g.X, k*g.Y, k*g.Z
	r[0] = Vec{X: c + x*g.X, Y: x*g.Y - z, Z: x*g.Z + y}
	r[1] = Vec{X: x*g.Y + z, Y: c + y*g.Y, Z: y*g.Z - x}
	r[2] = Vec{X: x*g.Z - y, Y: y*g.Z + x, Z: c + z*g.Z}
}

// turn returns r·v.
func (r *rotation) turn(v Vec) Vec {
	return Vec{
		X: r[0].X*v.X + r[0].Y*v.Y + r[0].Z*v.Z,
		Y: r[1].X*v.X + r[1].Y*v.Y + r[1].Z*v.Z,
		Z: r[2].X*v.X + r[2].Y*v.Y + r[2].Z*v.Z,
	}
}

// back returns the transpose of r times v: the direction v in the turned frame.
func (r *rotation) back(v Vec) Vec {
	return r3.Add(r3.Add(r3.Scale(v.X, r[0]), r3.Scale(v.Y, r[1])), r3.Scale(v.Z, r[2]))
}

// spin returns the angular velocity of cayley(g) when g changes at the rate dg:
// 2/(1+g²)·(dg + g×dg), in the frame the rotation starts from.
func spin(g, dg Vec) Vec {
	k := 2 / (1 + r3.Dot(g, g))
	return r3.Scale(k, r3.Add(dg, r3.Cross(g, dg)))
}

// gibbsRate returns the rate of g at which cayley(g) turns with the angular
// velocity omega: the inverse of [spin].
func gibbsRate(g, omega Vec) Vec {
	x := r3.Sub(omega, r3.Cross(g, omega))
	return r3.Scale(0.5, r3.Add(x, r3.Scale(r3.Dot(g, omega), g)))
}

// pullback returns the row over dg of the linear form m·ω: the transpose of
// [spin] applied to m.
func pullback(g, m Vec) Vec {
	k := 2 / (1 + r3.Dot(g, g))
	return r3.Scale(k, r3.Sub(m, r3.Cross(g, m)))
}

// about returns v turned about the unit axis k by the angle whose half has the
// tangent h, right-handed.
func about(k, v Vec, h float64) Vec {
	d := 1 / (1 + h*h)
	c, s := (1-h*h)*d, 2*h*d
	kv := r3.Scale(r3.Dot(k, v)*(1-c), k)
	return r3.Add(r3.Add(r3.Scale(c, v), r3.Scale(s, r3.Cross(k, v))), kv)
}

// halfTangent returns the tangent of half the angle a, the measure of a turn in
// [about].
func halfTangent(a float64) float64 { return math.Tan(a / 2) }
