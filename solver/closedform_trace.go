package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Limits within which the closed form follows a path. Beyond them the general
// path follower goes on.
const (
	// closedSlack is the least slack of a swing (see [swing]): its two solutions
	// stand at least 13 degrees apart, seen from the circle's centre.
	closedSlack = 0.05
	// closedGain is the least movement of the wheel centre, as a share of that of
	// the lower ball joint, at which the arm's angle still describes the travel.
	closedGain = 0.1
	// closedTurn is the largest step, as the tangent of half the arm's turn.
	closedTurn = 0.1
	// closedTrust is the largest correction of a step as a share of the step.
	closedTrust = 0.1
	// closedChange bounds the change of slope and slacks within one step: either
	// way by this factor. Between two poses that pass, no lock has been stepped
	// over.
	closedChange = 3.0
	// closedFinish is the error of travel, in mm, that a last correction along the
	// exact tangent takes away: what remains is of the order of its square over
	// the curvature's radius, some 1e-10 mm.
	closedFinish = 1e-4
	// closedCorrections bounds the corrections of one step, closedHalvings the
	// refusals of a step.
	closedCorrections = 6
	closedHalvings    = 4
)

// closedTrace follows a corner's path of travel in closed form. The one unknown
// is the turn of the lower arm; its derivative by the travel is exact, so that
// one evaluation for each position usually suffices.
type closedTrace struct {
	form  *closedForm // nil where the path has to be followed otherwise
	path  *cornerPath
	inner Vec // tie rod's inner ball

	now, before closedPoint
	stepped     bool // before is valid
	turn        Vec  // of the knuckle now: Gibbs vector
	wheel       Vec  // wheel centre now, in V
	pose        closedPose
}

// closedPoint is a solved point of the path.
type closedPoint struct {
	s, u, slope float64    // path parameter, turn of the arm and its derivative
	gain        float64    // movement of the wheel by that of the ball, signed
	slack       [2]float64 // see [swing]
}

// start puts c at s = 0 of a path that begins with the solution q. Where q is not
// on the branch of the static position, or the gear moves along the path, c does
// not follow it.
func (c *closedTrace) start(sys system, q *state) {
	c.form, c.stepped = nil, false
	p, ok := sys.(*cornerPath)
	if !ok || p.c.closed == nil || p.gear.rate != 0 {
		return
	}
	f := p.c.closed
	c.path, c.inner = p, r3.Add(f.inner, p.gear.still)
	at := p.c.poseOf(q, p.from)
	u := f.lower.turnTo(at.at(f.ball))
	if !f.place(u, c.inner, &c.pose) || !c.settle(0, u, 0) {
		return
	}
	if norm(r3.Sub(c.wheel, at.w)) <= trustFloor && lever*norm(r3.Sub(c.turn, at.g)) <= trustFloor {
		c.form = f
	}
}

// advance follows the path to s = target. It returns false where it had to give
// up before; c stands as far as it came.
func (c *closedTrace) advance(target float64) bool {
	refused := 0
	step := target - c.now.s
	for c.form != nil && c.now.s != target {
		next := c.now.s + step
		if math.Abs(target-c.now.s) <= math.Abs(step)*(1+1e-9) {
			next = target
		}
		if !c.try(next) {
			step /= 2
			if refused++; refused > closedHalvings {
				c.form = nil
			}
		}
	}
	return c.form != nil
}

// try takes one step to s = next. It returns false, and leaves c where it was,
// where that is not clearly on the same branch.
func (c *closedTrace) try(next float64) bool {
	u := c.predict(next)
	moved := math.Abs(u - c.now.u)
	if !(moved <= closedTurn) {
		return false
	}
	p := c.path
	height := p.c.wheel.Z + p.from + next*p.rate
	strayed := 0.0
	for range closedCorrections {
		if !c.form.place(u, c.inner, &c.pose) {
			return false
		}
		miss := height - c.pose.wheel.Z
		du := miss / c.pose.v.Z
		if strayed += math.Abs(du); !(strayed <= closedTrust*moved+trustFloor/lever) {
			return false
		}
		if math.Abs(miss) <= closedFinish*math.Min(c.pose.slack[0], c.pose.slack[1]) {
			return c.settle(next, u, du)
		}
		u += du
	}
	return false
}

// predict returns the arm's turn expected at s = next.
func (c *closedTrace) predict(next float64) float64 {
	a, b := &c.now, &c.before
	h := next - a.s
	if !c.stepped {
		return a.u + h*a.slope
	}
	w := a.s - b.s
	x := h / w
	y := 1 + x // Hermite basis on [before, now], continued to y
	return a.u + (1+2*y)*x*x*(b.u-a.u) + y*x*x*w*b.slope + y*y*x*w*a.slope
}

// settle makes the pose at hand, corrected along its tangent by du, the point at
// s. It returns false where that is too near a lock or too far from the point
// before.
func (c *closedTrace) settle(s, u, du float64) bool {
	o, lower := &c.pose, &c.path.c.closed.lower
	ball := 2 * math.Sqrt(lower.r2) / (1 + u*u)
	p := closedPoint{s: s, u: u + du, slope: c.path.rate / o.v.Z, gain: o.v.Z / ball, slack: o.slack}
	if !(math.Abs(p.gain) >= closedGain && p.slack[0] >= closedSlack && p.slack[1] >= closedSlack) {
		return false
	}
	if s != 0 && !p.near(&c.now) {
		return false
	}
	if s != 0 {
		c.before, c.stepped = c.now, true
	}
	g, rate := o.gibbs()
	c.now, c.turn, c.wheel = p, axpy(du, rate, g), axpy(du, o.v, o.wheel)
	return true
}

// near reports whether two points may lie on one branch: nothing between them has
// changed by more than a factor of [closedChange].
func (p *closedPoint) near(q *closedPoint) bool {
	like := func(a, b float64) bool { return a*closedChange >= b && b*closedChange >= a }
	return like(p.gain/q.gain, 1) && like(p.slack[0], q.slack[0]) && like(p.slack[1], q.slack[1])
}

// put sets q to the state in which c stands.
func (c *closedTrace) put(q *state) {
	w := &c.path.c.wheel
	*q = state{c.turn.X, c.turn.Y, c.turn.Z, c.wheel.X - w.X, c.wheel.Y - w.Y}
}

// advanceClosed follows the path in closed form as far as that goes, and reports
// whether that was all the way to s = target.
func (t *tracer) advanceClosed(target float64) bool {
	c := &t.closed
	if c.form == nil {
		return false
	}
	from := t.s
	whole := c.advance(target)
	if c.now.s != from {
		t.s = c.now.s
		c.put(&t.q)
		t.forget()
	}
	return whole
}
