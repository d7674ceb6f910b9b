package solver

import "gonum.org/v1/gonum/spatial/r3"

// startSteer brings the tracer to straight ahead at an attitude, on the path along
// which the steering input itself is the parameter, and returns that path.
func (x *Axle) startSteer(ws *Workspace, at Attitude, s Side) (system, error) {
	at.Steer = 0
	if x.beam != nil {
		if err := x.originOfBeam(ws, at); err != nil {
			return nil, err
		}
		ws.beam = beamPath{b: x.beam, gear: newGearPath(x.drag, 0, 1),
			from: [2]float64{at.travel(Left), at.travel(Right)}}
		ws.tracer.start(&ws.beam, &ws.origin)
		return &ws.beam, nil
	}
	if err := x.originOfCorner(ws, at, s); err != nil {
		return nil, err
	}
	ws.corner = cornerPath{c: x.corners[s], gear: newGearPath(x.balls[s], 0, 1), from: at.travel(s)}
	ws.tracer.start(&ws.corner, &ws.origin)
	return &ws.corner, nil
}

// steerLink names constraint i of a side, or of the axle.
func (x *Axle) steerLink(s Side, i int) string {
	if x.beam != nil {
		return x.beam.linkName(i)
	}
	return x.corners[s].name(i)
}

// straight returns the toes where the tracer stands, of side s or of both wheels
// of an axle.
func (x *Axle) straight(ws *Workspace, at Attitude, s Side) (toe [2]Angle) {
	var p SteerPoint
	x.steerPoint(ws, &SteerInput{At: at}, s, toe, &p)
	return [2]Angle{p.Position[Left].Toe, p.Position[Right].Toe}
}

// steerPoint sets of p what belongs to side s, or to both wheels of a solid axle,
// where the tracer stands. straight are the toes straight ahead.
func (x *Axle) steerPoint(ws *Workspace, in *SteerInput, s Side, straight [2]Angle, p *SteerPoint) {
	asked := SweepInput{Ground: true, Joints: in.Joints, From: Attitude{Steer: ws.tracer.s}}
	if x.beam != nil {
		x.steerBeam(ws, in.At, &asked, straight, p)
		return
	}
	path := &ws.corner
	at := path.c.poseOf(&ws.tracer.q, path.from)
	path.c.wheelOf(&at, &ws.wheel)
	x.measure(ws, &asked, s, in.At.travel(s), &p.Position[s])
	if in.Joints != nil {
		shift, _ := path.gear.shift(ws.tracer.s)
		x.holdJoints(ws, s, &asked)
		outer, rod := path.c.tieIn(&at, shift)
		x.jointsOfCorner(ws, s, &at, outer, rod, &p.Position[s].Joints)
	}
	now := cornerPath{c: path.c, gear: newGearPath(x.balls[s], ws.tracer.s, 1), from: path.from}
	var m movement
	rate := nan
	if _, ok := now.velocities(&ws.tracer, &ws.tracer.q, &m); ok {
		rate = m.toeRate(ws.wheel.spin)
	}
	p.steered(s, straight, rate)
}

// steered sets the steer angle of a wheel from its toe, and its rate from the
// toe's.
func (p *SteerPoint) steered(s Side, straight [2]Angle, toeRate float64) {
	p.Wheel[s], p.Rate[s] = p.Position[s].Toe-straight[s], toeRate
	if s == Left { // toe-in of the left wheel is steer to the right
		p.Wheel[s], p.Rate[s] = -p.Wheel[s], -p.Rate[s]
	}
}

// steerBeam sets both wheels of p where the tracer stands.
func (x *Axle) steerBeam(ws *Workspace, from Attitude, asked *SweepInput, straight [2]Angle, p *SteerPoint) {
	t, in := &ws.tracer, &ws.instant
	known := ws.beam.steering(t, in)
	for _, s := range Sides {
		x.holdJoints(ws, s, asked)
	}
	drag := x.dragStands(ws, asked)
	for _, s := range Sides {
		x.measureEnd(ws, asked, s, drag, from.travel(s), &p.Position[s])
		rate := nan
		if known {
			m := in.swept.knuckle(&in.pose, int(s))
			rate = m.toeRate(ws.wheel.spin)
		}
		p.steered(s, straight, rate)
	}
}

// steering sets in to the pose where the tracer stands and to how the axle moves
// there along the path of the steering input. It returns false at a lock.
func (p *beamPath) steering(t *tracer, in *axleInstant) bool {
	p.b.pose(&t.q, &in.pose)
	if !in.constrain(t, p) {
		return false
	}
	_, moving := p.gear.shift(t.s)
	in.swept.omega, in.swept.v, in.swept.turn = in.answer(&[beamUnknowns]float64{dragRow: -r3.Dot(in.rows.drag.force, moving)})
	return true
}
