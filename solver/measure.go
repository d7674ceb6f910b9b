package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// wheelPose is one wheel in some position, as a left one.
type wheelPose struct {
	centre  Vec // wheel centre
	spin    Vec // unit spin axis, outboard
	axisAt  Vec // a point of the steering axis
	axisDir Vec // its direction, upward
	contact Vec // with the ground, after stand
}

// toeOf returns the toe angle of the unit spin axis e of a left wheel.
func toeOf(e Vec) Angle { return Angle(atan2(e.X, e.Y)) }

// camberOf returns the camber angle of the unit spin axis e.
func camberOf(e Vec) Angle { return Angle(atan2(-e.Z, math.Sqrt(e.X*e.X+e.Y*e.Y))) }

// contact returns the point where the wheel plane's line of fall through the
// centre meets the ground, which lies r below the centre.
func contact(centre, e Vec, r float64) Vec {
	level := e.X*e.X + e.Y*e.Y
	k := r * e.Z / level // of the fall line (e.z·e - z)/level, which falls by 1
	return Vec{X: centre.X + k*e.X, Y: centre.Y + k*e.Y, Z: centre.Z - r}
}

// angles sets the angles and the wheel centre of a position, as a left one.
func (p *wheelPose) angles(out *Position) {
	out.Toe, out.Camber = toeOf(p.spin), camberOf(p.spin)
	out.Caster = Angle(atan2(-p.axisDir.X, p.axisDir.Z))
	out.KingpinInclination = Angle(atan2(-p.axisDir.Y, p.axisDir.Z))
	out.WheelCentre = p.centre
}

// stand puts the wheel on the ground, which lies r below its centre.
func (p *wheelPose) stand(r float64) { p.contact = contact(p.centre, p.spin, r) }

// ground sets what happens at the ground, on which the wheel stands; home is the contact
// point of the static position.
func (p *wheelPose) ground(out *Position, home Vec) {
	c := p.contact
	out.HalfTrackChange, out.WheelbaseChange = c.Y-home.Y, c.X-home.X
	a := p.axisAtHeight(c.Z)
	out.ScrubRadius, out.Trail = c.Y-a.Y, a.X-c.X
}

// axisAtHeight returns the point of the steering axis at height z.
func (p *wheelPose) axisAtHeight(z float64) Vec {
	return r3.Add(p.axisAt, r3.Scale((z-p.axisAt.Z)/p.axisDir.Z, p.axisDir))
}

// wheelOf sets out to the wheel of a corner in pose p; shift is that of the tie
// rod's inner ball.
func (c *corner) wheelOf(p *pose, out *wheelPose) {
	out.centre, out.spin = p.w, p.r.turn(c.spin)
	switch c.axis.kind {
	case ballJointAxis:
		out.axisAt = p.at(c.axis.lower)
		out.axisDir = r3.Sub(p.at(c.axis.upper), out.axisAt)
	case mountAxis:
		out.axisAt = p.at(c.axis.lower)
		out.axisDir = r3.Sub(c.axis.upper, out.axisAt)
	case screwAxis:
		var w [tieRow]wrench
		for i := range w {
			c.rods[i].constrain(p, Vec{}, &w[i])
		}
		omega, v := freeMotion(&w)
		out.turnsBy(omega, v)
	}
}

// turnsBy sets the steering axis to the screw axis of a steering motion of the wheel
// centre, v, and about it, ω: see [unit.screw].
func (p *wheelPose) turnsBy(omega, v Vec) {
	if omega.Z < 0 {
		omega, v = r3.Scale(-1, omega), r3.Scale(-1, v)
	}
	p.axisAt = r3.Add(p.centre, r3.Scale(1/r3.Dot(omega, omega), r3.Cross(omega, v)))
	p.axisDir = omega
}

// freeMotion returns the turn ω and the level velocity v of the reference point
// with which a body on four rods moves freely. Two rods that are well apart in
// plan view give v for any ω; what the other two then ask is that ω be square to
// a vector each.
func freeMotion(w *[tieRow]wrench) (omega, v Vec) {
	best, size := &splits[0], -1.0
	for i := range splits {
		s := &splits[i]
		if d := math.Abs(plan(&w[s.i], &w[s.j])); d > size {
			best, size = s, d
		}
	}
	p, q := &w[best.i], &w[best.j]
	inv := 1 / plan(p, q)
	omega = r3.Cross(reduced(&w[best.k], p, q, inv), reduced(&w[best.l], p, q, inv))
	a, b := -r3.Dot(p.moment, omega), -r3.Dot(q.moment, omega)
	return omega, Vec{X: inv * (q.force.Y*a - p.force.Y*b), Y: inv * (p.force.X*b - q.force.X*a)}
}

// reduced returns the moment of r less those multiples of p and q that have its
// level force; inv is the inverse of their determinant.
func reduced(r, p, q *wrench, inv float64) Vec {
	return reduce(r.moment, inv*plan(r, q), p.moment, inv*plan(p, r), q.moment)
}

// wheelOf sets out to wheel i of the axle in pose p, as a left one.
func (b *beam) wheelOf(p *axlePose, i int, out *wheelPose) {
	k, e := &b.ends[i], &p.ends[i]
	s := Side(i)
	out.centre = s.Mirrored(b.at(p, e.wheel))
	out.spin = s.Mirrored(b.spinOf(p, i))
	out.axisAt = s.Mirrored(b.at(p, e.foot))
	out.axisDir = s.Mirrored(p.r.turn(k.rise))
}

// spinOf returns the spin axis of wheel i of the axle in pose p, in V.
func (b *beam) spinOf(p *axlePose, i int) Vec {
	k := &b.ends[i]
	return p.r.turn(about(k.dir, k.spin, p.ends[i].h))
}
