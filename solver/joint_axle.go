package solver

import "gonum.org/v1/gonum/spatial/r3"

// heldJoints are the joints of a side, as a left one of a corner, with their axes in V:
// that of the inner one where the steering input has turned it, those of the outer ones as
// the knuckle holds them in the static position.
type heldJoints struct{ inner, outer, drag Joint }

// holdJoints sets the joints of side s, if asked for, at the steering input of in.
func (x *Axle) holdJoints(ws *Workspace, s Side, in *SweepInput) {
	if in.Joints == nil || in.ToeOnly {
		return
	}
	h := &ws.joints[s]
	*h = heldJoints{in.Joints.Inner[s], in.Joints.Outer[s], in.Joints.DragOuter}
	h.inner.Axis = x.innerAxis(h.inner.Axis, s, in.From.Steer)
	if x.beam != nil {
		h.outer.Axis = x.knuckleTurned(int(s), h.outer.Axis)
		h.drag.Axis = x.knuckleTurned(x.beam.pulls, h.drag.Axis)
		return
	}
	h.inner.Axis = s.Mirrored(h.inner.Axis)
	h.outer.Axis = x.static[s].turned(s.Mirrored(h.outer.Axis))
}

// jointsOfCorner sets out to the joint angles of a corner in pose p, whose tie rod ends at
// outer and runs along rod. The wheel of the workspace is in that pose.
func (x *Axle) jointsOfCorner(ws *Workspace, s Side, p *pose, outer, rod Vec, out *JointAngles) {
	h := &ws.joints[s]
	*out = JointAngles{
		Inner: misalignment(rod, h.inner.Axis, h.inner.Inline),
		Outer: misalignment(rod, p.r.turn(h.outer.Axis), h.outer.Inline),
	}
	out.arm(outer, rod, x.corners[s].tie.l, ws.wheel.axisAt, ws.wheel.axisDir)
}

// tieIn returns where the tie rod's outer ball stands in pose p, and the vector to there
// from the inner one, which is displaced by shift.
func (c *corner) tieIn(p *pose, shift Vec) (outer, rod Vec) {
	outer = p.at(c.tie.b)
	return outer, r3.Sub(outer, r3.Add(c.tie.a, shift))
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

// dragLink is how the drag link of a solid axle stands.
type dragLink struct {
	along Vec   // from its inner ball to the outer one
	outer Angle // misalignment of the outer joint
}

// dragStands returns how the drag link stands where the tracer does, in the pose of the
// workspace, if joints are asked for.
func (x *Axle) dragStands(ws *Workspace, in *SweepInput) (d dragLink) {
	if in.Joints == nil || in.ToeOnly || !in.fully(ws.tracer.s) {
		return d
	}
	b, p, h := x.beam, &ws.instant.pose, &ws.joints[Left].drag
	shift, _ := ws.beam.gear.shift(ws.tracer.s)
	d.along = r3.Sub(r3.Sub(b.at(p, b.dragOuter(p)), b.drag.a), shift)
	d.outer = misalignment(d.along, b.knuckleDirection(p, b.pulls, h.Axis), h.Inline)
	return d
}

// jointsOfBeam sets out to the joint angles of wheel i of an axle in pose p. The
// wheel of the workspace is in that pose.
func (x *Axle) jointsOfBeam(ws *Workspace, i int, p *axlePose, drag dragLink, out *JointAngles) {
	b, s, h := x.beam, Side(i), &ws.joints[i]
	tie := r3.Sub(p.ends[i].arm, p.ends[1-i].arm)
	*out = JointAngles{
		Inner:     misalignment(drag.along, h.inner.Axis, h.inner.Inline),
		Outer:     misalignment(tie, b.knuckleDirection(p, i, h.outer.Axis), h.outer.Inline),
		DragOuter: drag.outer,
	}
	out.arm(b.at(p, p.ends[i].arm), tie, b.tie, s.Mirrored(ws.wheel.axisAt), s.Mirrored(ws.wheel.axisDir))
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
