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
}

// toeOf returns the toe angle of the unit spin axis e of a left wheel.
func toeOf(e Vec) Angle { return Angle(math.Atan2(e.X, e.Y)) }

// camberOf returns the camber angle of the unit spin axis e.
func camberOf(e Vec) Angle { return Angle(math.Asin(clamp(-e.Z, -1, 1))) }

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
	out.Caster = Angle(math.Atan2(-p.axisDir.X, p.axisDir.Z))
	out.KingpinInclination = Angle(math.Atan2(-p.axisDir.Y, p.axisDir.Z))
	out.WheelCentre = p.centre
}

// ground sets what happens at the ground, which lies r below the centre; home is
// the contact point of the static position.
func (p *wheelPose) ground(out *Position, home Vec, r float64) {
	c := contact(p.centre, p.spin, r)
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
		out.axisAt, out.axisDir = c.screw(p)
	}
}

// screw returns the instantaneous screw axis of steering in pose p: see
// [unit.screw].
func (c *corner) screw(p *pose) (at, dir Vec) {
	var rows [4][5]float64
	var w wrench
	for i := range rows {
		c.rods[i].constrain(p, Vec{}, &w)
		rows[i] = [5]float64{w.moment.X, w.moment.Y, w.moment.Z, w.force.X, w.force.Y}
	}
	n := crossRows(&rows)
	omega, v := Vec{X: n[0], Y: n[1], Z: n[2]}, Vec{X: n[3], Y: n[4]}
	if omega.Z < 0 {
		omega, v = r3.Scale(-1, omega), r3.Scale(-1, v)
	}
	return r3.Add(p.w, r3.Scale(1/r3.Dot(omega, omega), r3.Cross(omega, v))), omega
}

// crossRows returns the vector square to all four rows: its components are the
// signed minors of the rows, by the 2×2 minors of the upper and the lower two.
func crossRows(rows *[4][5]float64) (n [5]float64) {
	upper, lower := minorsOf(&rows[0], &rows[1]), minorsOf(&rows[2], &rows[3])
	sign := 1.0
	for skip := range n {
		c := &otherColumns[skip]
		sum := 0.0
		for _, s := range &splits {
			i, j, k, l := c[s.i], c[s.j], c[s.k], c[s.l]
			sum += s.sign * upper[i][j] * lower[k][l]
		}
		n[skip] = sign * sum
		sign = -sign
	}
	return n
}

// otherColumns are the columns of a minor that leaves out one of five.
var otherColumns = [5][4]uint8{{1, 2, 3, 4}, {0, 2, 3, 4}, {0, 1, 3, 4}, {0, 1, 2, 4}, {0, 1, 2, 3}}

// minorsOf returns the 2×2 minors of two rows, by their columns in ascending order.
func minorsOf(a, b *[5]float64) (m [5][5]float64) {
	for i := range 5 {
		for j := i + 1; j < 5; j++ {
			m[i][j] = a[i]*b[j] - a[j]*b[i]
		}
	}
	return m
}

// wheelOf sets out to wheel i of the axle in pose p, as a left one.
func (b *beam) wheelOf(p *axlePose, i int, out *wheelPose) {
	k, e := &b.ends[i], &p.ends[i]
	s := Side(i)
	out.centre = s.mirrored(b.at(p, e.wheel))
	out.spin = s.mirrored(b.spinOf(p, i))
	out.axisAt = s.mirrored(b.at(p, e.foot))
	out.axisDir = s.mirrored(p.r.turn(k.rise))
}

// spinOf returns the spin axis of wheel i of the axle in pose p, in V.
func (b *beam) spinOf(p *axlePose, i int) Vec {
	k := &b.ends[i]
	return p.r.turn(about(k.dir, k.spin, p.ends[i].h))
}
