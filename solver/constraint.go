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
	l := norm(d)
	return rod{name: name, a: a, b: r3.Sub(p, o), l: l, inv: 1 / l, static: d}
}

// stretch returns (d²-l²)/2l for the vector d between the rod's joints: to first
// order the length by which it is too long, in mm. Squared lengths have a smooth
// derivative everywhere; the length itself has none at zero.
func (r *rod) stretch(d Vec) float64 {
	return ((d.X*d.X + d.Y*d.Y + d.Z*d.Z) - r.l*r.l) * (0.5 * r.inv)
}

// constrain sets w to the rod's unit pull on a knuckle in pose p, its inner ball
// displaced by shift, and returns its stretch.
func (r *rod) constrain(p *pose, shift Vec, w *wrench) float64 {
	ax := p.r[0].X*r.b.X + p.r[0].Y*r.b.Y + p.r[0].Z*r.b.Z
	ay := p.r[1].X*r.b.X + p.r[1].Y*r.b.Y + p.r[1].Z*r.b.Z
	az := p.r[2].X*r.b.X + p.r[2].Y*r.b.Y + p.r[2].Z*r.b.Z
	dx, dy, dz := p.w.X+ax-r.a.X-shift.X, p.w.Y+ay-r.a.Y-shift.Y, p.w.Z+az-r.a.Z-shift.Z
	fx, fy, fz := r.inv*dx, r.inv*dy, r.inv*dz
	w.force.X, w.force.Y, w.force.Z = fx, fy, fz
	w.moment.X, w.moment.Y, w.moment.Z = ay*fz-az*fy, az*fx-ax*fz, ax*fy-ay*fx
	return (fx*dx + fy*dy + fz*dz - r.l) * 0.5
}

// wrench is the row of a constraint on one rigid body: the residual's derivative
// by a displacement v of the body's reference point and a turn ω about it is
// force·v + moment·ω. For a rod it is the unit pull along the rod.
type wrench struct {
	force, moment Vec
}

// pull returns the wrench of a unit force f at r from the reference point.
func pull(f, r Vec) wrench { return wrench{force: f, moment: r3.Cross(r, f)} }
