package solver

import "gonum.org/v1/gonum/spatial/r3"

// configuration is a unit with its points placed in V by some pose, each with a
// rate: by an unknown of the pose, by the blend from old to new set-up, or by a
// parameter of the car.
type configuration struct {
	u     *unit
	pts   []dvec
	spins []dvec // unit spin axis of each wheel
	blend dual   // 0 the car as it was, 1 as it is changed to

	before  []dvec // points before any part was exchanged: lengths that stay
	shimmed [maxUnitPoints]dvec
}

// caster returns the caster angle of a corner, or the mean of an axle's two. The
// screw axis of a multi-link depends on where pivots stand that are shimmed to
// fit: they are shimmed first. It is not a number where they cannot be.
func (c *configuration) caster() dual {
	if !c.u.adjuster.pivots || c.u.wheels[0].axis.kind != screwAxis {
		return c.u.caster(c.pts)
	}
	pts := c.shimmed[:len(c.pts)]
	copy(pts, c.pts)
	if err := c.u.shim(pts, c.before); err != nil {
		return dual{nan, nan}
	}
	return c.u.caster(pts)
}

// placement places the points of a unit for the unknowns q.
type placement struct {
	u       *unit
	from    []dvec // every point before it is placed
	spins   []dvec
	r       rotation
	g, move Vec
	h       [2]float64 // kingpin turns of an axle: tangents of the half angle
}

func (p *placement) set(q *state) {
	p.g = Vec{X: q[0], Y: q[1], Z: q[2]}
	p.r = cayley(p.g)
	p.move = Vec{X: q[3], Y: q[4], Z: q[5]}
	p.h = [2]float64{q[6], q[7]}
}

// place sets c to the points in the pose of p. The rates of c are those of the
// points themselves, carried along.
func (p *placement) place(c *configuration) {
	if p.still() {
		copy(c.pts, p.from)
		copy(c.spins, p.spins)
		return
	}
	o := p.u.reference(p.from)
	for i := range p.from {
		x := p.from[i]
		switch b := p.u.points[i].body; b {
		case chassisBody:
		case mainBody:
			x = p.carry(x, o)
		default:
			x = p.carry(p.steer(x, b), o)
		}
		c.pts[i] = x
	}
	for i := range p.spins {
		c.spins[i] = p.placeSpin(i)
	}
}

// placeValues is place where no point has a rate.
func (p *placement) placeValues(c *configuration) {
	o := p.u.reference(p.from)
	for i := range p.from {
		switch b := p.u.points[i].body; b {
		case chassisBody:
			c.pts[i] = p.from[i]
		case mainBody:
			c.pts[i].v = r3.Add(r3.Add(p.r.turn(r3.Sub(p.from[i].v, o.v)), o.v), p.move)
		default:
			c.pts[i] = p.carry(p.steer(p.from[i], b), o)
		}
	}
	for i := range p.spins {
		c.spins[i] = p.placeSpin(i)
	}
}

// still reports whether the pose is the one in which the points stand.
func (p *placement) still() bool {
	return p.g == (Vec{}) && p.move == (Vec{}) && p.h == [2]float64{}
}

// carry returns x moved with the main body.
func (p *placement) carry(x, o dvec) dvec {
	m := x.less(o).turned(&p.r).plus(o)
	m.v = r3.Add(m.v, p.move)
	return m
}

// kingpin returns the lower end and the unit direction of an axle's kingpin,
// before it is placed.
func (p *placement) kingpin(body int) (at, dir dvec) {
	a := p.u.wheels[body-leftBody].axis
	return p.from[a.lower], p.from[a.upper].less(p.from[a.lower]).unit()
}

// steer returns x turned about its kingpin.
func (p *placement) steer(x dvec, body int) dvec {
	at, dir := p.kingpin(body)
	return x.less(at).turnedAbout(dir, p.h[body-leftBody]).plus(at)
}

func (p *placement) placeSpin(i int) dvec {
	e := p.spins[i]
	if p.u.beam {
		_, dir := p.kingpin(leftBody + i)
		e = e.turnedAbout(dir, p.h[i])
	}
	return e.turned(&p.r)
}

// rates sets the rates of c to the motion of unknown k of the pose in which c
// was placed.
func (p *placement) rates(k int, c *configuration) {
	for i := range c.pts {
		c.pts[i].d = Vec{}
	}
	for i := range c.spins {
		c.spins[i].d = Vec{}
	}
	c.blend.d = 0
	var q state
	q[k] = 1
	p.addMotion(&q, c)
}

// addMotion adds to the rates of c the motion of the pose in which c was placed
// when its unknowns change at the rates q.
func (p *placement) addMotion(q *state, c *configuration) {
	o := r3.Add(p.u.reference(p.from).v, p.move)
	omega := spin(p.g, Vec{X: q[0], Y: q[1], Z: q[2]})
	v := Vec{X: q[3], Y: q[4], Z: q[5]}
	for i := range c.pts {
		if p.u.points[i].body != chassisBody {
			c.pts[i].d = r3.Add(c.pts[i].d, r3.Add(v, r3.Cross(omega, r3.Sub(c.pts[i].v, o))))
		}
	}
	for i := range c.spins {
		c.spins[i].d = r3.Add(c.spins[i].d, r3.Cross(omega, c.spins[i].v))
	}
	if p.u.beam {
		for wheel := range p.u.wheels {
			p.addTurn(wheel, q[6+wheel], c)
		}
	}
}

// addTurn adds to the rates of c the turn of one knuckle on its kingpin, whose
// unknown changes at the rate h.
func (p *placement) addTurn(wheel int, h float64, c *configuration) {
	w := &p.u.wheels[wheel]
	at := c.pts[w.axis.lower].v
	dir := r3.Unit(r3.Sub(c.pts[w.axis.upper].v, at))
	omega := r3.Scale(2*h/(1+p.h[wheel]*p.h[wheel]), dir)
	for i := range c.pts {
		if p.u.points[i].body == w.body {
			c.pts[i].d = r3.Add(c.pts[i].d, r3.Cross(omega, r3.Sub(c.pts[i].v, at)))
		}
	}
	c.spins[wheel].d = r3.Add(c.spins[wheel].d, r3.Cross(omega, c.spins[wheel].v))
}
