package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// closedForm is a corner of a double wishbone, a strut or a swing arm, solved joint
// by joint without iteration. Given the turn of the lower arm, the lower ball joint
// stands on its circle; the upper ball joint where the upper arm's circle meets a
// sphere about it, at a swing arm on a circle of its own by the same turn, or at a
// strut the mount where it is; the tie rod's outer ball where its circle about the
// line of the two meets a sphere about the inner ball. These three carry the knuckle.
//
// It is the fast way, not the only one: the angle of an arm ceases to describe
// the movement where two links come in line, and there the general path follower
// takes over. The two know nothing of each other's equations, so that each checks
// the other in the tests.
type closedForm struct {
	lower circle
	ball  Vec // lower ball joint, from the wheel centre, static
	arm   Vec // tie rod's outer ball, likewise
	inner Vec // tie rod's inner ball in V, straight ahead
	rod2  float64

	upper       circle // of the upper ball joint; unused for a strut
	spacing2    float64
	upperBranch float64
	tieBranch   float64
	hinged      bool  // the upper arm is the lower one
	fixed       triad // of a knuckle on two balls

	strut *strut // nil for a knuckle on two balls
	slide slide
}

// triad holds three points of the knuckle as a frame: lower ball joint, upper ball
// joint or mount, and tie rod ball. Components are those of the static position.
type triad struct {
	n, p, q Vec     // dual to the placed frame: n of length 1, p and q over h2
	along   float64 // of the tie rod ball from the lower ball joint, along n
	h2      float64 // its distance from n, squared
	l, inv  float64 // from lower to upper point, and its inverse
	wheel   Vec     // wheel centre from the lower ball joint, by n, p and q
}

// slide is a strut's axis from the lower ball joint, static.
type slide struct {
	offset Vec     // the point of the axis nearest to the ball, from the ball
	o2     float64 // its length, squared
}

// newClosedForm returns the closed form of c, which is a corner of u, in f, or nil
// where it has none: without a lower arm, and an upper one or a strut.
func newClosedForm(c *corner, u *unit, f *closedForm) *closedForm {
	if len(u.arms) == 0 || (c.strut == nil && len(u.arms) < 2) {
		return nil
	}
	tie, lower := &c.tie, &u.arms[0]
	*f = closedForm{ball: c.rods[lower.first].b, arm: tie.b, inner: tie.a, rod2: tie.l * tie.l, strut: c.strut, hinged: u.hinged()}
	f.lower = c.circle(lower)
	var top Vec // from the wheel centre, static
	if f.strut != nil {
		f.slide = newSlide(f.strut, f.ball)
		top = r3.Sub(f.strut.top, c.wheel)
	} else {
		top = c.rods[u.arms[1].first].b
		f.addUpperArm(c, &u.arms[1])
	}
	f.fixed = f.triad(r3.Sub(top, f.ball))
	foot := axpy(f.fixed.along, f.fixed.n, r3.Add(c.wheel, f.ball))
	f.tieBranch = branchOf(f.fixed.n, r3.Sub(f.inner, foot), f.fixed.p)
	return f
}

// circle returns the path of an arm's ball.
func (c *corner) circle(a *armSpec) circle {
	first := &c.rods[a.first]
	return newCircle(first.a, c.rods[a.second].a, r3.Add(c.wheel, first.b))
}

func (f *closedForm) addUpperArm(c *corner, a *armSpec) {
	lower, upper := r3.Add(c.wheel, f.ball), r3.Add(c.wheel, c.rods[a.first].b)
	f.upper = c.circle(a)
	f.spacing2 = r3.Norm2(r3.Sub(upper, lower))
	f.upperBranch = branchOf(f.upper.axis, r3.Sub(lower, f.upper.centre), f.upper.radial)
}

func newSlide(s *strut, ball Vec) slide {
	on := r3.Sub(s.on, ball)
	offset := axpy(-r3.Dot(on, s.dir), s.dir, on)
	return slide{offset: offset, o2: r3.Dot(offset, offset)}
}

// triad returns the frame of the knuckle whose upper point stands at top from the
// lower ball joint, static.
func (f *closedForm) triad(top Vec) triad {
	t := triad{l: norm(top)}
	t.inv = 1 / t.l
	t.n = r3.Scale(t.inv, top)
	arm := r3.Sub(f.arm, f.ball)
	t.along = r3.Dot(arm, t.n)
	p := axpy(-t.along, t.n, arm)
	t.h2 = r3.Dot(p, p)
	t.p = r3.Scale(1/t.h2, p)
	t.q = r3.Cross(t.n, t.p)
	t.wheel = Vec{X: -r3.Dot(f.ball, t.n), Y: -r3.Dot(f.ball, t.p), Z: -r3.Dot(f.ball, t.q)}
	return t
}

// closedPose is a position of a corner in closed form, with its derivatives by the
// turn of the lower arm.
type closedPose struct {
	triad    *triad
	sliding  triad // what triad points to for a strut
	stance         // with n, p and q the triad as it stands in V
	p        Vec
	wheel    Vec // wheel centre in V
	omega, v Vec // turn of the knuckle and velocity of the wheel centre
	slack    [2]float64
}

// place sets o to the position in which the lower arm is turned by the angle whose
// half has the tangent u; inner is the tie rod's inner ball. It returns false
// where a link does not reach.
func (f *closedForm) place(u float64, inner Vec, o *closedPose) bool {
	ball, rate := f.lower.at(u)
	var top Vec // upper ball or mount, from the lower ball
	var swung Vec
	switch {
	case f.strut != nil:
		top = f.placeMount(ball, o)
	case f.hinged:
		top, swung = f.placeHinged(u, ball, o)
	default:
		top, swung = f.placeUpper(ball, o)
	}
	t := o.triad
	o.n, o.inv = r3.Scale(t.inv, top), t.inv
	foot := axpy(t.along, o.n, ball)
	d := r3.Sub(inner, foot)
	o.p, o.slack[1] = swing(o.n, d, t.h2, 0.5*(r3.Dot(d, d)+t.h2-f.rod2), f.tieBranch)
	o.q = r3.Cross(o.n, o.p)
	arm := axpy(t.wheel.X, o.n, axpy(t.wheel.Y, o.p, r3.Scale(t.wheel.Z, o.q)))
	o.wheel = r3.Add(ball, arm)
	if !(o.slack[0] > 0 && o.slack[1] > 0) {
		return false
	}
	spread := f.spread(o, rate, swung)
	o.reach, o.link = axpy(t.along, o.n, o.p), r3.Sub(o.p, d)
	o.grip = 1 / r3.Dot(o.link, o.q)
	o.omega = o.turn(rate, spread)
	o.v = r3.Add(rate, r3.Cross(o.omega, arm))
	return true
}

// placeUpper returns the upper ball joint from the lower one, and from the centre
// of its own circle.
func (f *closedForm) placeUpper(ball Vec, o *closedPose) (top, swung Vec) {
	o.triad = &f.fixed
	d := r3.Sub(ball, f.upper.centre)
	swung, o.slack[0] = swing(f.upper.axis, d, f.upper.r2, 0.5*(r3.Dot(d, d)+f.upper.r2-f.spacing2), f.upperBranch)
	return r3.Sub(swung, d), swung
}

// placeHinged returns the kingpin's upper end from its lower one, and its velocity.
func (f *closedForm) placeHinged(u float64, ball Vec, o *closedPose) (top, rate Vec) {
	o.triad, o.slack[0] = &f.fixed, 1
	upper, rate := f.upper.at(u)
	return r3.Sub(upper, ball), rate
}

// placeMount returns the mount from the lower ball joint. Its place on the strut's
// axis follows from the distance of the two.
func (f *closedForm) placeMount(ball Vec, o *closedPose) Vec {
	top := r3.Sub(f.strut.top, ball)
	square := r3.Dot(top, top) - f.slide.o2
	o.slack[0] = square / r3.Dot(top, top)
	o.sliding = f.triad(axpy(math.Sqrt(square), f.strut.dir, f.slide.offset))
	o.triad = &o.sliding
	return top
}

// spread returns the velocity of the knuckle at its upper point less that at the
// lower ball joint, which moves at rate. A wishbone's upper ball moves along its
// own circle; a strut's knuckle slides through the mount along its axis. Either
// speed follows from the two points keeping their distance along n. The upper end of
// a kingpin moves at swung.
func (f *closedForm) spread(o *closedPose, rate, swung Vec) Vec {
	if f.hinged {
		return r3.Sub(swung, rate)
	}
	var dir Vec
	if f.strut != nil {
		d, t := f.strut.dir, o.triad
		dir = axpy(r3.Dot(d, t.n), o.n, axpy(r3.Dot(d, t.p), o.p, r3.Scale(r3.Dot(d, t.q), o.q)))
	} else {
		dir = r3.Cross(f.upper.axis, swung)
	}
	return axpy(r3.Dot(o.n, rate)/r3.Dot(o.n, dir), dir, r3.Scale(-1, rate))
}

// gibbs returns the Gibbs vector of the knuckle's turn from the static position,
// and its derivative by the turn of the lower arm.
func (o *closedPose) gibbs() (g, rate Vec) {
	t := o.triad
	trace := r3.Dot(t.n, o.n) + r3.Dot(t.p, o.p) + r3.Dot(t.q, o.q)
	axis := r3.Add(r3.Cross(t.n, o.n), r3.Add(r3.Cross(t.p, o.p), r3.Cross(t.q, o.q)))
	g = r3.Scale(1/(1+trace), axis)
	return g, gibbsRate(g, o.omega)
}
