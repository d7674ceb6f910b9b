package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// fourBar is the spatial four-bar of pitman arm, centre link and idler arm.
type fourBar struct {
	pitman, idler crank
	length        float64 // of the link, squared
	branch        float64 // of the idler's two solutions, the one of straight ahead
}

// crank is an arm that turns about an axis.
type crank struct {
	pivot, axis Vec // axis of length 1
	ball        Vec // ball's place from the pivot, straight ahead
}

func newCrank(pivot, axis, ball Vec) crank {
	return crank{pivot: pivot, axis: r3.Unit(axis), ball: r3.Sub(ball, pivot)}
}

// at returns the ball's place when the arm is turned by t from straight ahead.
func (c *crank) at(t dual) dvec {
	k := fixed(c.axis)
	along := r3.Scale(r3.Dot(c.axis, c.ball), c.axis)
	radial := fixed(r3.Sub(c.ball, along))
	return fixed(r3.Add(c.pivot, along)).plus(radial.times(t.cos())).plus(k.cross(radial).times(t.sin()))
}

func newFourBar(g *Gear) *fourBar {
	f := &fourBar{
		pitman: newCrank(g.Points[pitmanPivot], g.PitmanAxis, g.Points[pitmanBall]),
		idler:  newCrank(g.Points[idlerPivot], g.IdlerAxis, g.Points[idlerBall]),
	}
	d := r3.Sub(g.Points[idlerBall], g.Points[pitmanBall])
	f.length = r3.Dot(d, d)
	a, b, _ := f.closure(fixed(g.Points[pitmanBall]))
	f.branch = 1
	if math.Atan2(b.v, a.v) > 0 { // the idler stands at 0: on the side away from the extreme
		f.branch = -1
	}
	return f
}

// closure returns a, b, c of the equation a·cos ψ + b·sin ψ = c that the idler's
// turn ψ meets when the link reaches from p to its ball.
func (f *fourBar) closure(p dvec) (a, b, c dual) {
	i := &f.idler
	along := r3.Scale(r3.Dot(i.axis, i.ball), i.axis)
	radial := r3.Sub(i.ball, along)
	o := fixed(r3.Add(i.pivot, along)).less(p)
	a = o.dot(fixed(radial)).scaled(2)
	b = o.dot(fixed(r3.Cross(i.axis, radial))).scaled(2)
	c = constant(f.length - r3.Dot(radial, radial)).less(o.dot(o))
	return a, b, c
}

// idlerTurn returns the idler's turn for the pitman ball at p. It is NaN where
// the link does not reach.
func (f *fourBar) idlerTurn(p dvec) dual {
	a, b, c := f.closure(p)
	r2 := a.times(a).plus(b.times(b))
	root := r2.less(c.times(c)).sqrt() // √(a²+b²-c²): 0 at a lock
	t := datan2(root, c)
	return datan2(b, a).plus(t.scaled(f.branch))
}

// frame returns the pitman ball and the unit axes of the link when the pitman arm
// is turned by t: along the link, along the part of the pitman axis square to
// it, and square to both.
func (f *fourBar) frame(t dual) (at dvec, axes [3]dvec) {
	at = f.pitman.at(t)
	x := f.idler.at(f.idlerTurn(at)).less(at).unit()
	k := fixed(f.pitman.axis)
	y := k.less(x.times(k.dot(x))).unit()
	return at, [3]dvec{x, y, x.cross(y)}
}

// lockStep is the step, in radians, in which a lock of the four-bar is looked for.
const lockStep = math.Pi / 720

// lock returns the pitman turn, in the direction given by its sign, at which the
// link and the idler arm come in line; half a turn where they never do.
func (f *fourBar) lock(direction float64) float64 {
	free := func(t float64) bool { return !math.IsNaN(f.idlerTurn(f.pitman.at(constant(t))).v) }
	for t := 0.0; t < math.Pi; t += lockStep {
		if free(direction * (t + lockStep)) {
			continue
		}
		lo, hi := t, t+lockStep
		for range 60 {
			if mid := (lo + hi) / 2; free(direction * mid) {
				lo = mid
			} else {
				hi = mid
			}
		}
		return direction * lo
	}
	return direction * math.Pi
}

// linkBall is an inner ball that rides on the centre link, or on the pitman arm
// alone where there is no idler.
type linkBall struct {
	bar    *fourBar // nil without an idler
	pitman crank    // carries the ball where bar is nil
	local  Vec      // place on the link, in its axes from the pitman ball
	home   Vec      // place in V, straight ahead
	side   Side
}

func newLinkBall(g *Gear, p Vec, s Side) linkBall {
	if !g.HasIdler {
		return linkBall{pitman: newCrank(g.Points[pitmanPivot], g.PitmanAxis, p), home: p, side: s}
	}
	bar := newFourBar(g)
	at, axes := bar.frame(dual{})
	d := r3.Sub(p, at.v)
	local := Vec{X: r3.Dot(d, axes[0].v), Y: r3.Dot(d, axes[1].v), Z: r3.Dot(d, axes[2].v)}
	return linkBall{bar: bar, local: local, home: p, side: s}
}

func (b linkBall) shift(input float64) (d, rate Vec) {
	t := dual{v: input, d: 1}
	var x dvec
	if b.bar == nil {
		x = b.pitman.at(t)
	} else {
		at, axes := b.bar.frame(t)
		x = at.plus(axes[0].times(constant(b.local.X))).
			plus(axes[1].times(constant(b.local.Y))).
			plus(axes[2].times(constant(b.local.Z)))
	}
	return b.side.mirrored(r3.Sub(x.v, b.home)), b.side.mirrored(x.d)
}
