package solver

import "math"

// Bounds of the search for a steering input.
const (
	// wheelLimit is the error allowed in a wheel's angle, radians.
	wheelLimit = 1e-13
	// maxRackTravel is the farthest that a rack is moved, mm.
	maxRackTravel = 1000.0
	// firstTurn is the wheel angle, in radians, of the first step outward; later
	// ones overshoot by a tenth, so that the answer comes to lie between two.
	firstTurn, overshoot = 0.1, 1.1
	maxSteerSteps        = 200
)

// SteerFor returns the axle with one wheel steered by the given angle from
// straight ahead, positive to the left, at the heave and roll of an attitude. It
// returns a [*SteerLockError] where the steering locks before.
func (x *Axle) SteerFor(ws *Workspace, s Side, wheel Angle, at Attitude) (SteerPoint, error) {
	if err := x.needsGear(); err != nil {
		return SteerPoint{}, err
	}
	if !(math.Abs(wheel.Degrees()) < 90) {
		return SteerPoint{}, &InputError{"steer", "of a wheel must lie within 90 deg of straight ahead"}
	}
	q := wheelQuest{x: x, ws: ws, in: SteerInput{At: at}, side: s, wheel: wheel}
	if err := q.find(); err != nil {
		return SteerPoint{}, err
	}
	var c SteerCurve
	q.in.Inputs = []float64{q.now.Input}
	if err := x.Steer(ws, &q.in, &c); err != nil {
		return SteerPoint{}, err
	}
	if len(c.Points) == 0 {
		return SteerPoint{}, q.locked(c.Reach.other(q.now.Input))
	}
	return c.Points[0], nil
}

// other returns the end of the reach on the side of an input.
func (r *SteerReach) other(input float64) SteerEnd {
	if input < 0 {
		return r.Lo
	}
	return r.Hi
}

// wheelQuest looks for the input that steers one wheel by an angle.
type wheelQuest struct {
	x        *Axle
	ws       *Workspace
	in       SteerInput
	side     Side
	wheel    Angle
	straight [2]Angle
	now      SteerPoint // where the tracer stands
}

// miss returns by how much the wheel is short of the angle asked for, positive
// until it is reached.
func (q *wheelQuest) miss() float64 {
	return math.Copysign(1, float64(q.wheel)) * float64(q.wheel-q.now.Wheel[q.side])
}

// find steers outward until the wheel has passed the angle, then narrows down.
func (q *wheelQuest) find() error {
	if _, err := q.x.startSteer(q.ws, q.in.At, q.side); err != nil {
		return err
	}
	q.straight = q.x.straight(q.ws, q.in.At, q.side)
	q.look()
	if q.wheel == 0 {
		return nil
	}
	if rate := q.now.Rate[q.side]; !(math.Abs(rate) > 0) {
		return q.locked(SteerEnd{Side: q.side, Link: "the tie rod in line with the steering arm"})
	}
	direction := math.Copysign(1, float64(q.wheel)*q.now.Rate[q.side])
	limit := q.limit(direction)
	for range maxSteerSteps {
		from, short := q.now.Input, q.miss()
		step := math.Abs(math.Min(short*overshoot, firstTurn) / q.now.Rate[q.side])
		to := from + direction*math.Min(step, math.Abs(limit-from))
		end := q.move(to)
		if q.miss() <= 0 {
			return q.narrow(from, q.now.Input)
		}
		if end != nil {
			return q.locked(SteerEnd{Input: end.s, Side: q.side, Link: q.x.steerLink(q.side, end.link)})
		}
		if to == limit {
			return q.locked(SteerEnd{Input: limit, Side: q.side, Link: gearLock})
		}
	}
	return q.locked(SteerEnd{Input: q.now.Input, Side: q.side, Link: "the steering's greatest angle"})
}

// limit returns the input, in the direction of a sign, up to which the gear is
// moved: just short of its own lock.
func (q *wheelQuest) limit(direction float64) float64 {
	lo, hi := q.x.steerReach()
	if direction < 0 {
		return math.Max(lo*(1-gridSlack), -maxRackTravel)
	}
	return math.Min(hi*(1-gridSlack), maxRackTravel)
}

// move brings the tracer to an input, or to the lock before it.
func (q *wheelQuest) move(to float64) *deadlock {
	end := q.ws.tracer.advance(to)
	q.look()
	return end
}

// look measures where the tracer stands.
func (q *wheelQuest) look() {
	q.now.Input = q.ws.tracer.s
	q.x.steerPoint(q.ws, &q.in, q.side, q.straight, &q.now)
}

// narrow brings the tracer to the angle by Newton's method, bisecting where a step
// would leave the interval in which the wheel passes it: short of it at near,
// beyond at far. It starts from near, as far may be a lock.
func (q *wheelQuest) narrow(near, far float64) error {
	if _, err := q.x.startSteer(q.ws, q.in.At, q.side); err != nil {
		return err
	}
	end := q.move(near)
	for range maxSteerSteps {
		short := q.miss()
		if end != nil || math.Abs(short) <= wheelLimit {
			break
		}
		if short > 0 {
			near = q.now.Input
		} else {
			far = q.now.Input
		}
		to := q.now.Input + float64(q.wheel-q.now.Wheel[q.side])/q.now.Rate[q.side]
		if !((to-near)*(far-to) > 0) {
			to = (near + far) / 2
		}
		if to == near || to == far {
			break // as near as the input's own rounding lets it come
		}
		end = q.move(to)
	}
	if end != nil {
		return q.locked(SteerEnd{Input: end.s, Side: q.side, Link: q.x.steerLink(q.side, end.link)})
	}
	return nil
}

// locked returns the error of a lock.
func (q *wheelQuest) locked(e SteerEnd) error {
	return &SteerLockError{Side: e.Side, Wheel: q.wheel, Lock: q.now.Wheel[q.side], Input: e.Input, Link: e.Link}
}
