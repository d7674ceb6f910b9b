package solver

import "gonum.org/v1/gonum/spatial/r3"

// jointsOfCorner sets out to the joint angles of a corner in pose p with the
// inner ball displaced by shift. The wheel of the workspace is in that pose.
func (x *Axle) jointsOfCorner(ws *Workspace, s Side, p *pose, shift Vec, in *SweepInput, out *JointAngles) {
	c := x.corners[s]
	r := &c.tie
	outer, inner := p.at(r.b), r3.Add(r.a, shift)
	rod := r3.Sub(outer, inner)
	j := in.Joints
	*out = JointAngles{
		Inner: j.Inner[s].misalignment(rod, s.Mirrored(x.innerAxis(j.Inner[s].Axis, s, in.From.Steer))),
		Outer: j.Outer[s].misalignment(rod, p.r.turn(x.static[s].turned(s.Mirrored(j.Outer[s].Axis)))),
	}
	out.arm(outer, inner, ws.wheel.axisAt, ws.wheel.axisDir)
}

// innerAxis returns where the steering input has turned the axis of the inner
// joint of side s, in V.
func (x *Axle) innerAxis(axis Vec, s Side, steer float64) Vec {
	if b, ok := x.gearBall(s).(*linkBall); ok && steer != 0 {
		return b.carry(axis, steer)
	}
	return axis
}

// carry returns a direction in V that the link holds, after the pitman arm has
// turned by t.
func (b *linkBall) carry(dir Vec, t float64) Vec {
	if b.bar == nil {
		return fixed(dir).turnedAbout(fixed(b.pitman.axis), halfTangent(t)).v
	}
	_, from := b.bar.frame(dual{})
	_, to := b.bar.frame(constant(t))
	var out Vec
	for i := range from {
		out = axpy(r3.Dot(dir, from[i].v), to[i].v, out)
	}
	return out
}

// jointsOfBeam sets out to the joint angles of wheel i of an axle in pose p. The
// wheel of the workspace is in that pose.
func (x *Axle) jointsOfBeam(ws *Workspace, i int, p *axlePose, shift Vec, in *SweepInput, out *JointAngles) {
	b, s, j := x.beam, Side(i), in.Joints
	tie := r3.Sub(p.ends[0].arm, p.ends[1].arm)
	drag := r3.Sub(r3.Sub(b.at(p, b.dragOuter(p)), b.drag.a), shift)
	*out = JointAngles{
		Inner:     j.Inner[s].misalignment(drag, x.innerAxis(j.Inner[s].Axis, s, in.From.Steer)),
		Outer:     j.Outer[s].misalignment(tie, b.knuckleDirection(p, i, x.knuckleTurned(i, j.Outer[s].Axis))),
		DragOuter: j.DragOuter.misalignment(drag, b.knuckleDirection(p, b.pulls, x.knuckleTurned(b.pulls, j.DragOuter.Axis))),
	}
	ball, other := b.at(p, p.ends[i].arm), b.at(p, p.ends[1-i].arm)
	out.arm(ball, other, s.Mirrored(ws.wheel.axisAt), s.Mirrored(ws.wheel.axisDir))
}

// knuckleDirection returns where a direction held by knuckle i points in pose p.
func (b *beam) knuckleDirection(p *axlePose, i int, static Vec) Vec {
	return p.r.turn(about(b.ends[i].dir, static, p.ends[i].h))
}

// turned returns where a direction held by the main body, in the unit's frame in the
// file's own static position, points in the static position that was solved.
func (s *staticUnit) turned(dir Vec) Vec {
	if g := (Vec{X: s.q[0], Y: s.q[1], Z: s.q[2]}); g != (Vec{}) {
		r := cayley(g)
		return r.turn(dir)
	}
	return dir
}

// knuckleTurned is [staticUnit.turned] of a direction held by knuckle i of a solid axle,
// which turns on its kingpin too.
func (x *Axle) knuckleTurned(i int, dir Vec) Vec {
	s := x.static[0]
	return about(x.beam.ends[i].dir, s.turned(dir), s.q[6+i])
}
