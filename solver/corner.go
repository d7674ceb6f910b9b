package solver

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// corner is one wheel on its suspension, as a left one, in its static position:
// a rigid knuckle held by five constraints, so that with the wheel centre's
// height given it has no freedom left: the rods that locate it, four or two and a
// strut that takes the place of two, and the tie rod. Lengths follow from the
// positions given here. It is never changed once built.
type corner struct {
	rods  [tieRow]rod // that locate the knuckle
	n     int         // of them in use; a strut's two constraints follow
	tie   rod         // the last constraint
	strut *strut      // nil where there is none
	wheel Vec         // wheel centre in V
	spin  Vec         // unit spin axis in V, pointing outboard
	axis  axisPoints
	pair  rowPair // by which its equations are solved
	// closed is its solution without iteration, nil where there is none.
	closed *closedForm
}

// strut is a knuckle-fixed axis that slides through a top mount on the body. Its
// two constraints say where the axis pierces the level plane through the mount.
type strut struct {
	top  Vec     // mount, in V
	on   Vec     // a point of the axis, from the wheel centre, static
	dir  Vec     // unit direction of the axis, upward, static
	span float64 // from on to the mount, static, mm
}

// axisPoints says which two points the steering axis passes through.
type axisPoints struct {
	kind  axisKind
	lower Vec // lower ball joint, from the wheel centre, static
	upper Vec // upper ball joint likewise; the mount in V for a strut
}

type axisKind uint8

const (
	ballJointAxis axisKind = iota // both points on the knuckle
	mountAxis                     // lower on the knuckle, upper on the body
	screwAxis                     // no points: the instantaneous screw axis of steering
)

// name returns what messages call constraint i.
func (c *corner) name(i int) string {
	switch {
	case i == tieRow:
		return c.tie.name
	case i >= c.n:
		return "strut"
	}
	return c.rods[i].name
}

// pose is a position of the knuckle: its rotation from the static position and
// its wheel centre.
type pose struct {
	r rotation
	g Vec // Gibbs vector of r
	w Vec // wheel centre in V
}

// at returns the place in V of a knuckle point given from the wheel centre.
func (p *pose) at(b Vec) Vec { return r3.Add(p.w, p.r.turn(b)) }

// poseOf returns the knuckle's pose for the unknowns q at the given travel of the
// wheel centre, mm.
func (c *corner) poseOf(q *state, travel float64) (p pose) {
	c.pose(q, travel, &p)
	return p
}

// pose sets p to what poseOf returns.
func (c *corner) pose(q *state, travel float64, p *pose) {
	p.g = Vec{X: q[0], Y: q[1], Z: q[2]}
	p.r.cayley(p.g)
	p.w = Vec{X: c.wheel.X + q[3], Y: c.wheel.Y + q[4], Z: c.wheel.Z + travel}
}

// pierce returns the point, from the wheel centre, where the strut's axis passes
// the level plane of the mount in pose p, and the axis direction there.
func (s *strut) pierce(p *pose) (at, dir Vec) {
	on, dir := p.r.turn(s.on), p.r.turn(s.dir)
	t := (s.top.Z - p.w.Z - on.Z) / dir.Z
	return r3.Add(on, r3.Scale(t, dir)), dir
}

// cornerPath is the system of one corner whose wheel is moved along a straight
// path of travel and steering: s=0 stands at from, and s grows with rate.
type cornerPath struct {
	c          *corner
	gear       gearPath
	from, rate float64 // travel, mm, and its change by s

	eq    cornerEquations // scratch
	split split           // of eq, after newton
}

// gearPath gives the place of a tie rod's inner ball along a path.
type gearPath struct {
	gear       innerBall
	from, rate float64 // steering input, mm or rad, and its change by s
	still      Vec     // the ball's displacement where rate is 0
}

// newGearPath returns the path on which the input starts at from and changes by
// rate with s. A nil gear holds still.
func newGearPath(gear innerBall, from, rate float64) gearPath {
	p := gearPath{gear: gear, from: from, rate: rate}
	if gear != nil && from != 0 && rate == 0 {
		p.still, _ = gear.shift(from)
	}
	return p
}

// innerBall moves the inner ball of a tie rod with the steering input.
type innerBall interface {
	// shift returns the ball's displacement from straight ahead, in mm in
	// the frame of a left corner, and its derivative by the input.
	shift(input float64) (d, rate Vec)
}

func (g *gearPath) shift(s float64) (d, rate Vec) {
	if g.rate == 0 || g.gear == nil {
		return g.still, Vec{}
	}
	d, rate = g.gear.shift(g.from + s*g.rate)
	return d, r3.Scale(g.rate, rate)
}

// cornerUnknowns is the size of a corner's system: rotation and the wheel
// centre's x and y; its height is the travel asked for. tieRow is the constraint of
// the tie rod among as many.
const (
	cornerUnknowns = 5
	tieRow         = cornerUnknowns - 1
)

func (p *cornerPath) size() int { return cornerUnknowns }

func (p *cornerPath) residual(q *state, s float64, f *column) {
	c := p.c
	at := c.poseOf(q, p.from+s*p.rate)
	shift, _ := p.gear.shift(s)
	for i := range c.n {
		r := &c.rods[i]
		f[i] = r.stretch(r3.Sub(at.at(r.b), r.a))
	}
	f[tieRow] = c.tie.stretch(r3.Sub(r3.Sub(at.at(c.tie.b), c.tie.a), shift))
	if c.strut != nil {
		on, _ := c.strut.pierce(&at)
		f[c.n] = at.w.X + on.X - c.strut.top.X
		f[c.n+1] = at.w.Y + on.Y - c.strut.top.Y
	}
}

func (p *cornerPath) linearise(q *state, s float64, f *column, jac *matrix, rate *column) {
	e := &p.eq
	p.constrain(q, s, e)
	for i := range e.w {
		f[i], rate[i] = e.f[i], e.rate[i]
		cornerRow(&e.at, &e.w[i], &jac[i])
	}
}

// cornerEquations are a corner's constraints in one pose.
type cornerEquations struct {
	at   pose
	w    rows
	f    [cornerUnknowns]float64 // residuals
	rate [cornerUnknowns]float64 // their derivatives by s
}

// constrain sets e to the constraints in the pose q at s.
func (p *cornerPath) constrain(q *state, s float64, e *cornerEquations) {
	c := p.c
	c.pose(q, p.from+s*p.rate, &e.at)
	shift, moving := p.gear.shift(s)
	for i := range c.n {
		e.f[i] = c.rods[i].constrain(&e.at, Vec{}, &e.w[i])
	}
	e.f[tieRow] = c.tie.constrain(&e.at, shift, &e.w[tieRow])
	if c.strut != nil {
		p.constrainStrut(e)
	}
	for i := range e.w {
		e.rate[i] = e.w[i].force.Z * p.rate
	}
	e.rate[tieRow] -= r3.Dot(e.w[tieRow].force, moving)
}

func (p *cornerPath) constrainStrut(e *cornerEquations) {
	c := p.c
	on, dir := c.strut.pierce(&e.at)
	e.f[c.n] = e.at.w.X + on.X - c.strut.top.X
	e.f[c.n+1] = e.at.w.Y + on.Y - c.strut.top.Y
	w := slideWrenches(on, dir)
	copy(e.w[c.n:], w[:])
}

// newton is that of [directSystem].
func (p *cornerPath) newton(q *state, s float64, step, slope *state) float64 {
	e := &p.eq
	p.constrain(q, s, e)
	det := p.split.factor(&e.w, p.c.pair)
	if det != 0 {
		p.split.answer(e, &e.f, step)
		p.split.answer(e, &e.rate, slope)
	}
	return det * e.at.stretch()
}

// stretch returns the determinant of ω over the rate of the Gibbs vector.
func (p *pose) stretch() float64 {
	n := 1 + r3.Dot(p.g, p.g)
	return 8 / (n * n)
}

// answer sets d to the change of a corner's unknowns that undoes b.
func (s *split) answer(e *cornerEquations, b *[cornerUnknowns]float64, d *state) {
	omega, x, y := s.solve(&e.w, b)
	g := gibbsRate(e.at.g, omega)
	d[0], d[1], d[2], d[3], d[4] = -g.X, -g.Y, -g.Z, -x, -y
}

// slideWrenches returns the rows of a strut's two constraints where its axis,
// of direction dir, pierces the mount's level at on: the knuckle point there
// moves, and the piercing point with it but for the part along the axis.
func slideWrenches(on, dir Vec) [2]wrench {
	return [2]wrench{
		pull(Vec{X: 1, Z: -dir.X / dir.Z}, on),
		pull(Vec{Y: 1, Z: -dir.Y / dir.Z}, on),
	}
}

// cornerRow writes a wrench as a row over a corner's unknowns.
func cornerRow(at *pose, w *wrench, row *column) {
	g := pullback(at.g, w.moment)
	row[0], row[1], row[2] = g.X, g.Y, g.Z
	row[3], row[4] = w.force.X, w.force.Y
}
