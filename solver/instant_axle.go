package solver

// instantOfCorner sets out to what holds of the wheel of the workspace, whose tie rod ends
// at outer and runs along rod. Its corner moves as its closed form says, or by's answers.
func (x *Axle) instantOfCorner(ws *Workspace, s Side, by answers, outer, rod Vec, out *Instant) {
	path := &ws.corner
	var m movement
	switch f := ws.tracer.closed.form; {
	case f != nil:
		f.movement(&path.eq.at, &ws.wheel, outer, rod, &m)
	case by.known():
		path.movement(by, &m)
	default:
		out.blank()
		return
	}
	ws.wheel.views(&m, &m, out)
	m.angleRates(ws.wheel.spin, path.rate, out)
	out.mirror(s)
}

// The two ways in which a solid axle moves in its two views.
var (
	heaveRates = [2]float64{1, 1}
	rollRates  = [2]float64{1, -1}
)

// axleInstant is how a solid axle moves in one position.
type axleInstant struct {
	beamStand
	heave, roll, swept beamMovement
}

// instant sets in to how the axle moves where the tracer stands, in the pose that it
// holds. It returns false at a lock.
func (p *beamPath) instant(t *tracer, in *axleInstant) bool {
	if !in.constrain(t, p) {
		return false
	}
	in.heave.velocities(&in.beamStand, heaveRates)
	in.roll.velocities(&in.beamStand, rollRates)
	l, r := p.rate[Left], p.rate[Right]
	in.swept.sum((l+r)/2, &in.heave, (l-r)/2, &in.roll)
	in.swept.accelerations(&in.beamStand)
	return true
}

// instantOfEnd sets out to what holds of the wheel of the workspace at one end of a solid
// axle, which moves as the workspace knows.
func (x *Axle) instantOfEnd(ws *Workspace, s Side, out *Instant) {
	in := &ws.instant
	front, side, swept := in.roll.knuckle(&in.pose, int(s)), in.heave.knuckle(&in.pose, int(s)), in.swept.turning(&in.pose, int(s))
	ws.wheel.views(&front, &side, out)
	swept.angleRates(ws.wheel.spin, 1, out)
	out.mirror(s)
}
