package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// fourBar is the spatial four-bar of pitman arm, centre link and idler arm.
type fourBar struct {
	pitman, idler crank
	length        dual    // of the link, squared
	branch        float64 // of the idler's two solutions, the one of straight ahead
}

// crank is an arm that turns about an axis.
type crank struct {
	axis   Vec  // of length 1
	centre dvec // of the ball's circle
	radial dvec // from the centre to the ball, straight ahead
}

func newCrank(pivot dvec, axis Vec, ball dvec) crank {
	k := fixed(r3.Unit(axis))
	arm := ball.less(pivot)
	along := k.times(k.dot(arm))
	return crank{axis: k.v, centre: pivot.plus(along), radial: arm.less(along)}
}

// at returns the ball's place when the arm is turned by t from straight ahead.
func (c *crank) at(t dual) dvec {
	return c.centre.plus(c.radial.times(t.cos())).plus(fixed(c.axis).cross(c.radial).times(t.sin()))
}

// newFourBar returns the four-bar of a gear whose points stand at pts, with
// their rates.
func newFourBar(g *Gear, pts *gearPoints) *fourBar {
	f := &fourBar{
		pitman: newCrank(pts[pitmanPivot], g.PitmanAxis, pts[pitmanBall]),
		idler:  newCrank(pts[idlerPivot], g.IdlerAxis, pts[idlerBall]),
	}
	d := pts[idlerBall].less(pts[pitmanBall])
	f.length = d.dot(d)
	f.branch = 1
	stray := f.straying(pts)
	f.branch = -1
	if stray < f.straying(pts) {
		f.branch = 1
	}
	return f
}

// straying returns how far from straight ahead the branch chosen has the idler
// when the pitman arm is: 0 for the branch on which the four-bar was built.
func (f *fourBar) straying(pts *gearPoints) float64 {
	return math.Abs(math.Sin(f.idlerTurn(pts[pitmanBall]).v / 2))
}

// closure returns a, b, c of the equation a·cos ψ + b·sin ψ = c that the idler's
// turn ψ meets when the link reaches from p to its ball.
func (f *fourBar) closure(p dvec) (a, b, c dual) {
	i := &f.idler
	o := i.centre.less(p)
	a = o.dot(i.radial).scaled(2)
	b = o.dot(fixed(i.axis).cross(i.radial)).scaled(2)
	c = f.length.less(i.radial.dot(i.radial)).less(o.dot(o))
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
	lo := f.freeTo(direction, math.Pi)
	if lo >= math.Pi {
		return direction * math.Pi
	}
	hi := lo + lockStep
	for range 60 {
		if mid := (lo + hi) / 2; f.free(direction * mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return direction * lo
}

// clear reports whether a turn of the pitman arm is short of the lock by the steps of [fourBar.lock]
// alone, which near straight ahead costs far less than to find the lock. One that is not may
// still be short of it.
func (f *fourBar) clear(turn float64) bool {
	size := math.Abs(turn)
	return size < math.Pi && f.freeTo(math.Copysign(1, turn), size) >= size
}

// freeTo returns the size of the turn up to which every step of lockStep is free, in the
// direction given by its sign: that of the first step at or beyond most where all are.
func (f *fourBar) freeTo(direction, most float64) float64 {
	t := 0.0
	for t < most && f.free(direction*(t+lockStep)) {
		t += lockStep
	}
	return t
}

// free reports whether link and idler arm have a place at a turn of the pitman arm.
func (f *fourBar) free(turn float64) bool {
	return !math.IsNaN(f.idlerTurn(f.pitman.at(constant(turn))).v)
}

// gearPoints are the hardpoints of a centre link with their rates.
type gearPoints [4]dvec

func (g *Gear) points() *gearPoints {
	var pts gearPoints
	for i, p := range g.Points {
		pts[i] = fixed(p)
	}
	return &pts
}

// linkBall is an inner ball that rides on the centre link, or on the pitman arm
// alone where there is no idler.
type linkBall struct {
	bar    *fourBar // nil without an idler
	pitman crank    // carries the ball where bar is nil
	local  [3]dual  // place on the link, in its axes from the pitman ball
	home   dvec     // place in V, straight ahead
	side   Side
}

func newLinkBall(g *Gear, pts *gearPoints, home dvec, s Side) *linkBall {
	if !g.HasIdler {
		return &linkBall{pitman: newCrank(pts[pitmanPivot], g.PitmanAxis, home), home: home, side: s}
	}
	b := &linkBall{bar: newFourBar(g, pts), home: home, side: s}
	at, axes := b.bar.frame(dual{})
	for i := range axes {
		b.local[i] = home.less(at).dot(axes[i])
	}
	return b
}

// place returns the ball's displacement from straight ahead, as a left one, for
// the pitman turn t.
func (b *linkBall) place(t dual) dvec {
	var x dvec
	if b.bar == nil {
		x = b.pitman.at(t)
	} else {
		at, axes := b.bar.frame(t)
		x = at
		for i := range axes {
			x = x.plus(axes[i].times(b.local[i]))
		}
	}
	x = x.less(b.home)
	return dvec{b.side.Mirrored(x.v), b.side.Mirrored(x.d)}
}

func (b *linkBall) shift(input float64) (d, rate Vec) {
	x := b.place(dual{v: input, d: 1})
	return x.v, x.d
}
