package solver

import "math"

// steerLength is the length, in mm, that a radian of steering input counts for
// as a step along a path; a rack's millimetre counts for itself.
const steerLength = 150.0

// pathLength returns the length of a path by its changes of travel and steering.
func (x *Axle) pathLength(steer float64, travels ...float64) float64 {
	l := math.Abs(steer)
	if x.gear.Quantity() == AngleQuantity {
		l *= steerLength
	}
	for _, t := range travels {
		l = math.Max(l, math.Abs(t))
	}
	return l
}

// originOfCorner brings the workspace to the start of a sweep of one corner.
func (x *Axle) originOfCorner(ws *Workspace, from Attitude, s Side) error {
	c, t := x.corners[s], from.travel(s)
	ws.origin = state{}
	l := x.pathLength(from.Steer, t)
	if l == 0 {
		return nil
	}
	ws.corner = cornerPath{c: c, gear: newGearPath(x.balls[s], 0, from.Steer/l), rate: t / l}
	ws.tracer.start(&ws.corner, &ws.origin)
	if end := ws.tracer.advance(l); end != nil {
		return x.reachError(s, from, end.s/l, c.name(end.link))
	}
	ws.origin = ws.tracer.q
	return nil
}

func (x *Axle) reachError(s Side, at Attitude, share float64, link string) error {
	return &ReachError{Side: s, Axle: x.beam != nil, Link: link, Travel: at.travel(s), Steer: at.Steer, Share: share,
		Angle: x.gear.Quantity() == AngleQuantity}
}

func (x *Axle) sweepCorner(ws *Workspace, in *SweepInput, s Side, out *Curve) error {
	if err := x.originOfCorner(ws, in.From, s); err != nil {
		return err
	}
	c := x.corners[s]
	ws.corner = cornerPath{
		c:    c,
		gear: newGearPath(x.balls[s], in.From.Steer, 0),
		from: in.From.travel(s), rate: in.Motion.rates()[s],
	}
	out.reserve(len(in.Travels), in.rateColumns())
	x.prepareRates(ws, in, s)
	x.holdJoints(ws, s, in)
	zero := splitAtZero(in.Travels)
	last := x.follow(ws, &ws.corner, in.Travels[zero:], 1, func(i int, t float64) {
		x.measureCorner(ws, in, s, t, zero+i, out)
	})
	first := x.follow(ws, &ws.corner, in.Travels[:zero], -1, func(i int, t float64) {
		x.measureCorner(ws, in, s, t, i, out)
	})
	if last.end != nil {
		out.Reach.endBump(last.end, c.name(last.end.link))
	}
	if first.end != nil {
		out.Reach.endDroop(first.end, c.name(first.end.link))
	}
	out.trim(zero-first.count, zero+last.count)
	return nil
}

func (r *Reach) endBump(d *deadlock, link string) {
	r.Bump, r.BumpEnds, r.BumpLink, r.BumpUnsure = math.Abs(d.s), true, link, d.lost
}

func (r *Reach) endDroop(d *deadlock, link string) {
	r.Droop, r.DroopEnds, r.DroopLink, r.DroopUnsure = math.Abs(d.s), true, link, d.lost
}

// resize returns ps with n elements, reusing its memory where it is enough.
func resize(ps []Position, n int) []Position {
	if cap(ps) < n {
		return make([]Position, n)
	}
	return ps[:n]
}

// splitAtZero returns the index of the first travel that is not negative.
func splitAtZero(travels []float64) int {
	for i, t := range travels {
		if !(t < 0) {
			return i
		}
	}
	return len(travels)
}

// followed says how many positions of a run outward were reached and what ended
// it, nil if nothing did.
type followed struct {
	count int
	end   *deadlock
}

// follow moves a system outward from the origin of the workspace through travels,
// which ascend; direction -1 takes them from the last to the first. It calls
// visit at each position reached.
func (x *Axle) follow(ws *Workspace, sys system, travels []float64, direction int, visit func(i int, travel float64)) followed {
	t := &ws.tracer
	t.start(sys, &ws.origin)
	for k := range travels {
		i := k
		if direction < 0 {
			i = len(travels) - 1 - k
		}
		if end := t.advance(travels[i]); end != nil {
			return followed{k, end}
		}
		visit(i, travels[i])
	}
	return followed{len(travels), nil}
}

// measureCorner sets position i of out to where the tracer stands.
func (x *Axle) measureCorner(ws *Workspace, in *SweepInput, s Side, travel float64, i int, out *Curve) {
	path := &ws.corner
	p := &out.Positions[i]
	if in.ToeOnly {
		at := &path.eq.at
		path.c.pose(&ws.tracer.q, path.from+travel*path.rate, at)
		*p = Position{Travel: travel, Toe: toeOf(at.r.turn(path.c.spin))}
	} else {
		x.measureKnuckle(ws, in, s, travel, p)
	}
	if in.By != nil {
		x.rateCorner(ws, in, s, i, out)
	}
}

// measureKnuckle sets p from where the tracer stands.
func (x *Axle) measureKnuckle(ws *Workspace, in *SweepInput, s Side, travel float64, p *Position) {
	path := &ws.corner
	at, moves := &path.eq.at, in.Instant && in.fully(travel)
	by := path.stand(&ws.tracer, moves)
	path.wheelOf(by, &ws.wheel)
	x.measure(ws, in, s, travel, p)
	if !in.fully(travel) {
		return
	}
	shift, _ := path.gear.shift(travel)
	outer, rod := path.c.tieIn(at, shift)
	if in.Joints != nil {
		x.jointsOfCorner(ws, s, at, outer, rod, &p.Joints)
	}
	if moves {
		x.instantOfCorner(ws, s, by, outer, rod, &p.Instant)
	}
}

// measure sets p from the wheel of the workspace.
func (x *Axle) measure(ws *Workspace, in *SweepInput, s Side, travel float64, p *Position) {
	*p = Position{Travel: travel}
	ws.wheel.angles(p)
	if (in.Ground || in.Instant) && in.fully(travel) {
		ws.wheel.stand(x.tyreRadius)
	}
	if in.Ground && in.fully(travel) {
		ws.wheel.ground(p, x.home[s])
	}
	p.WheelCentre = s.Mirrored(p.WheelCentre)
}
