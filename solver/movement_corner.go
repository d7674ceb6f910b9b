package solver

import "gonum.org/v1/gonum/spatial/r3"

// movement sets m to how the knuckle moves in the pose q at s = 0, the path's
// start, with the gear at rest; t lends its memory. It returns false at a lock,
// where the pose has no derivative by the travel.
func (p *cornerPath) movement(t *tracer, q *state, m *movement) bool {
	if !p.velocities(t, q, m) {
		return false
	}
	at := p.c.poseOf(q, p.from)
	shift, _ := p.gear.shift(0)
	p.centrifugal(&at, shift, m, &t.f)
	t.lu.solve(&t.f, &t.step)
	m.alpha = spin(at.g, Vec{X: -t.step[0], Y: -t.step[1], Z: -t.step[2]})
	m.a = Vec{X: -t.step[3], Y: -t.step[4]}
	return true
}

// velocities sets the first derivatives of m, and leaves the factors of the
// equations in t.
func (p *cornerPath) velocities(t *tracer, q *state, m *movement) bool {
	p.linearise(q, 0, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, cornerUnknowns) {
		return false
	}
	t.lu.solve(&t.rate, &t.step)
	g := Vec{X: q[0], Y: q[1], Z: q[2]}
	m.omega = spin(g, Vec{X: -t.step[0], Y: -t.step[1], Z: -t.step[2]})
	m.v = Vec{X: -t.step[3], Y: -t.step[4], Z: p.rate}
	return true
}

// centrifugal sets f to the second derivatives of the constraints that remain
// when nothing accelerates: a rod's end that turns on leaves the rod's circle.
func (p *cornerPath) centrifugal(at *pose, shift Vec, m *movement, f *column) {
	c := p.c
	for i := range c.n {
		r := &c.rods[i]
		arm := at.r.turn(r.b)
		f[i] = r.bend(r3.Sub(r3.Add(at.w, arm), r.a), m.velocity(arm), centripetal(m.omega, arm))
	}
	arm := at.r.turn(c.tie.b)
	f[tieRow] = c.tie.bend(r3.Sub(r3.Sub(r3.Add(at.w, arm), c.tie.a), shift), m.velocity(arm), centripetal(m.omega, arm))
	if c.strut == nil {
		return
	}
	on, dir := c.strut.pierce(at)
	u, bias := m.velocity(on), centripetal(m.omega, on)
	for i, w := range slideWrenches(on, dir) {
		f[c.n+i] = 2*r3.Dot(r3.Cross(m.omega, w.force), u) + r3.Dot(w.force, bias)
	}
}

// bend returns the second derivative of the rod's stretch when the vector d along
// it changes with velocity u and acceleration a.
func (r *rod) bend(d, u, a Vec) float64 { return (r3.Dot(u, u) + r3.Dot(d, a)) * r.inv }
