package solver

import "gonum.org/v1/gonum/spatial/r3"

// armFrame is the place of an arm: its rear pivot and three directions, along the
// pivots' line, square to it towards the ball, and square to both.
type armFrame struct {
	at   Vec
	axes [3]Vec
}

// frame returns the place of the arm among the points of its unit.
func (a *armSpec) frame(pts []Vec) armFrame {
	return newArmFrame(pts[a.front], pts[a.rear], pts[a.ball])
}

func newArmFrame(front, rear, ball Vec) armFrame {
	k := r3.Unit(r3.Sub(front, rear))
	out := r3.Unit(square(k, r3.Sub(ball, rear)))
	return armFrame{at: rear, axes: [3]Vec{k, out, r3.Cross(k, out)}}
}

// into returns the coordinates of v in the frame, and from those back in V.
func (f *armFrame) into(v Vec) Vec {
	d := r3.Sub(v, f.at)
	return Vec{X: r3.Dot(d, f.axes[0]), Y: r3.Dot(d, f.axes[1]), Z: r3.Dot(d, f.axes[2])}
}

func (f *armFrame) from(c Vec) Vec {
	return axpy(c.X, f.axes[0], axpy(c.Y, f.axes[1], axpy(c.Z, f.axes[2], f.at)))
}

// read returns the reading at a travel.
func (p *travelProbe) read(x *Axle, ws *Workspace, travel float64) (float64, error) {
	if p.gauge.Reading == ContactReading {
		lift, err := x.lift(ws, p.side, Attitude{Heave: travel})
		return p.gauge.Zero + lift, err
	}
	point, err := p.point(x, ws, Attitude{Heave: travel})
	if err != nil {
		return 0, err
	}
	if p.gauge.Reading == LowerBallReading {
		return p.gauge.Zero + point.Z - p.home, nil
	}
	return r3.Norm(r3.Sub(point, p.body)), nil
}

// point returns where the probe's point stands, in the unit's frame.
func (p *travelProbe) point(x *Axle, ws *Workspace, at Attitude) (Vec, error) {
	if x.beam != nil {
		if err := x.originOfBeam(ws, at); err != nil {
			return Vec{}, err
		}
		pose := x.beam.poseOf(&ws.origin)
		return x.beam.at(&pose, pose.r.turn(p.local)), nil
	}
	if err := x.originOfCorner(ws, at, p.side); err != nil {
		return Vec{}, err
	}
	c := x.corners[p.side]
	pose := c.poseOf(&ws.origin, at.Heave)
	if p.arm == nil {
		return pose.at(p.local), nil
	}
	f, _ := p.arm.inPose(x.static[p.side], &pose)
	return f.from(p.local), nil
}

// inPose returns where an arm of a corner stands in a pose of its knuckle, and its
// ball from the wheel centre.
func (a *armSpec) inPose(st *staticUnit, p *pose) (armFrame, Vec) {
	ball := p.r.turn(r3.Sub(st.pts[a.ball], st.corner.wheel))
	return newArmFrame(st.pts[a.front], st.pts[a.rear], r3.Add(p.w, ball)), ball
}
