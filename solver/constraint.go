package solver

import "gonum.org/v1/gonum/spatial/r3"

// rod is a rigid link between a body point and a point of a moving body.
type rod struct {
	name string
	a    Vec     // joint on the body, in V, in the static position
	b    Vec     // joint on the moving body, from its reference point, static
	l    float64 // length, mm
	inv  float64 // 1/l
	// static is the vector from a to the joint on the moving body, static.
	static Vec
}

// newRod returns the link from the body point a to the point p of a moving body
// whose reference point stands at o, at the length it has in that position.
func newRod(name string, a, p, o Vec) rod {
	d := r3.Sub(p, a)
	l := r3.Norm(d)
	return rod{name: name, a: a, b: r3.Sub(p, o), l: l, inv: 1 / l, static: d}
}

// stretch returns (d²-l²)/2l for the vector d between the rod's joints: to first
// order the length by which it is too long, in mm. Squared lengths have a smooth
// derivative everywhere; the length itself has none at zero.
func (r *rod) stretch(d Vec) float64 {
	return ((d.X*d.X + d.Y*d.Y + d.Z*d.Z) - r.l*r.l) * (0.5 * r.inv)
}

// wrench is the row of a constraint on one rigid body: the residual's derivative
// by a displacement v of the body's reference point and a turn ω about it is
// force·v + moment·ω. For a rod it is the unit pull along the rod.
type wrench struct {
	force, moment Vec
}

// pull returns the wrench of a unit force f at r from the reference point.
func pull(f, r Vec) wrench { return wrench{force: f, moment: r3.Cross(r, f)} }
