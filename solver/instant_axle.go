package solver

// instantOfCorner sets out to what holds where the tracer stands: the wheel of
// the workspace at the given travel of a path.
func (x *Axle) instantOfCorner(ws *Workspace, s Side, path *cornerPath, travel float64, out *Instant) {
	p := &ws.around
	p.c, p.gear, p.from, p.rate = path.c, path.gear, path.from+travel*path.rate, 1
	var m movement
	if !p.movement(&ws.tracer, &ws.tracer.q, &m) {
		out.blank()
		return
	}
	ws.wheel.views(&m, &m, x.tyreRadius, out)
	asked := m.scaled(path.rate)
	asked.angleRates(ws.wheel.spin, out)
	out.mirror(s)
}

// The two ways in which a solid axle moves in its two views.
var (
	heaveRates = [2]float64{1, 1}
	rollRates  = [2]float64{1, -1}
)

// axleInstant is how a solid axle moves in one position.
type axleInstant struct {
	pose               axlePose
	heave, roll, swept beamMovement
}

// instant sets in to how the axle moves where the tracer stands. It returns
// false at a lock.
func (p *beamPath) instant(t *tracer, in *axleInstant) bool {
	t.sys.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, beamUnknowns) {
		return false
	}
	in.pose = p.b.poseOf(&t.q)
	in.heave.velocities(t, &in.pose, heaveRates)
	in.roll.velocities(t, &in.pose, rollRates)
	l, r := p.rate[Left], p.rate[Right]
	in.swept.sum((l+r)/2, &in.heave, (l-r)/2, &in.roll)
	shift, _ := p.gear.shift(t.s)
	in.swept.accelerations(t, p.b, &in.pose, shift)
	return true
}

// instantsOfBeam sets what holds of position i of both curves, where the tracer
// stands.
func (x *Axle) instantsOfBeam(ws *Workspace, i int, out *[2]Curve) {
	in := &ws.instant
	known := ws.beam.instant(&ws.tracer, in)
	for _, s := range Sides {
		n := &out[s].Positions[i].Instant
		if !known {
			n.blank()
			continue
		}
		x.beam.wheelOf(&in.pose, int(s), &ws.wheel)
		front, side := in.roll.knuckle(&in.pose, int(s)), in.heave.knuckle(&in.pose, int(s))
		ws.wheel.views(&front, &side, x.tyreRadius, n)
		swept := in.swept.knuckle(&in.pose, int(s))
		swept.angleRates(ws.wheel.spin, n)
		n.mirror(s)
	}
}
