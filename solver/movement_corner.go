package solver

import "gonum.org/v1/gonum/spatial/r3"

// stand brings p's scratch to where t stands. If it is asked how the knuckle moves there,
// and its closed form does not say, it sets the constraints and returns what answers for
// them: nothing known at a lock, where the pose has no derivative by the travel.
func (p *cornerPath) stand(t *tracer, moves bool) answers {
	if !moves || t.closed.form != nil {
		p.c.pose(&t.q, p.from+t.s*p.rate, &p.eq.at)
		return answers{}
	}
	p.constrain(&t.q, t.s, &p.eq)
	by, _ := p.answers(t)
	return by
}

// wheelOf sets out to the wheel where p's scratch stands. The screw axis of steering is
// that of a tie rod which lengthens, where by answers for it.
func (p *cornerPath) wheelOf(by answers, out *wheelPose) {
	at := &p.eq.at
	if p.c.axis.kind != screwAxis || !by.known() {
		p.c.wheelOf(at, out)
		return
	}
	out.centre, out.spin = at.w, at.r.turn(p.c.spin)
	out.turnsBy(by.answer(&[cornerUnknowns]float64{tieRow: 1}))
}

// movement sets m to how the knuckle moves by its wheel's travel, the gear at rest, in the
// pose of the constraints at hand, for which by answers.
func (p *cornerPath) movement(by answers, m *movement) {
	var lift [cornerUnknowns]float64
	for i := range lift {
		lift[i] = p.eq.w[i].force.Z
	}
	m.omega, m.v = by.answer(&lift)
	m.v.Z = 1
	b := p.centrifugal(m)
	m.alpha, _ = by.answer(&b)
}

// velocities sets the first derivatives of m, and returns what answers for the pose.
func (p *cornerPath) velocities(t *tracer, q *state, m *movement) (by answers, ok bool) {
	p.constrain(q, 0, &p.eq)
	by, ok = p.answers(t)
	if ok {
		m.omega, m.v = by.answer(&p.eq.rate)
		m.v.Z = p.rate
	}
	return by, ok
}

// answers solves a corner's constraints, as they stand in its path, for movements of the
// knuckle: by its split, or where that is unfit by the general factors of t.
type answers struct {
	path *cornerPath
	lu   *factors // nil where the split answers
}

// known reports whether a answers at all: the zero value does not.
func (a answers) known() bool { return a.path != nil }

// answers returns what solves the constraints at hand: false, and nothing known, at a lock.
func (p *cornerPath) answers(t *tracer) (by answers, ok bool) {
	by.path = p
	if p.split.factor(&p.eq.w, p.c.pair) != 0 {
		return by, true
	}
	for i := range p.eq.w {
		cornerRow(&p.eq.at, &p.eq.w[i], &t.jac[i])
	}
	if !t.lu.factor(&t.jac, cornerUnknowns) {
		return answers{}, false
	}
	by.lu = &t.lu
	return by, true
}

// answer returns the turn of the knuckle and the level movement of its wheel centre that
// undo b.
func (a answers) answer(b *[cornerUnknowns]float64) (omega, v Vec) {
	e := &a.path.eq
	if a.lu == nil {
		o, x, y := a.path.split.solve(&e.w, b)
		return Vec{X: -o.X, Y: -o.Y, Z: -o.Z}, Vec{X: -x, Y: -y}
	}
	var x column
	copy(x[:], b[:])
	a.lu.solve(&x, &x)
	return spin(e.at.g, Vec{X: -x[0], Y: -x[1], Z: -x[2]}), Vec{X: -x[3], Y: -x[4]}
}

// centrifugal returns the second derivatives of the constraints at hand that remain
// when nothing accelerates: a rod's end that turns on leaves the rod's circle.
func (p *cornerPath) centrifugal(m *movement) (f [cornerUnknowns]float64) {
	c, e := p.c, &p.eq
	for i := range c.n {
		f[i] = c.rods[i].bend(e.w[i].force, e.at.r.turn(c.rods[i].b), m)
	}
	f[tieRow] = c.tie.bend(e.w[tieRow].force, e.at.r.turn(c.tie.b), m)
	if c.strut == nil {
		return f
	}
	on, _ := c.strut.pierce(&e.at)
	u, bias := m.velocity(on), centripetal(m.omega, on)
	for i := range 2 {
		force := e.w[c.n+i].force
		f[c.n+i] = 2*r3.Dot(r3.Cross(m.omega, force), u) + r3.Dot(force, bias)
	}
	return f
}

// bend returns the second derivative of the rod's stretch, but for what m gains in speed,
// in the pose where the rod pulls along the unit vector d at arm from the wheel centre.
func (r *rod) bend(d, arm Vec, m *movement) float64 {
	o := &m.omega
	sx, sy, sz := o.Y*arm.Z-o.Z*arm.Y, o.Z*arm.X-o.X*arm.Z, o.X*arm.Y-o.Y*arm.X // ω×arm
	ux, uy, uz := m.v.X+sx, m.v.Y+sy, m.v.Z+sz
	return (ux*ux+uy*uy+uz*uz)*r.inv + // and d·(ω×(ω×arm))
		(d.Y*o.Z-d.Z*o.Y)*sx + (d.Z*o.X-d.X*o.Z)*sy + (d.X*o.Y-d.Y*o.X)*sz
}
