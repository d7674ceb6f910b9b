package solver

import "gonum.org/v1/gonum/spatial/r3"

// beamMovement is how a solid axle moves along a path: first and second
// derivatives by the path parameter, in V.
type beamMovement struct {
	omega, v, alpha Vec        // of the beam, v of its reference point
	turn, gain      [2]float64 // of the kingpins: rates of their angles
}

// velocities sets the first derivatives of m in the pose at for wheel travels
// that change at the given rates and the gear at rest. t holds the factors of the
// equations there.
func (m *beamMovement) velocities(t *tracer, at *axlePose, travel [2]float64) {
	t.step = column{6: -travel[0], 7: -travel[1]}
	t.lu.solve(&t.step, &t.step)
	m.omega, m.v, m.turn = at.rates(&t.step)
}

// sum sets the first derivatives of m to k times those of a and l times those of b.
func (m *beamMovement) sum(k float64, a *beamMovement, l float64, b *beamMovement) {
	m.omega = axpy(k, a.omega, r3.Scale(l, b.omega))
	m.v = axpy(k, a.v, r3.Scale(l, b.v))
	for i := range m.turn {
		m.turn[i] = k*a.turn[i] + l*b.turn[i]
	}
}

// rates turns minus the change of a state into rates of the beam and kingpins.
func (p *axlePose) rates(x *column) (omega, v Vec, turn [2]float64) {
	omega = spin(p.g, Vec{X: -x[0], Y: -x[1], Z: -x[2]})
	v = Vec{X: -x[3], Y: -x[4], Z: -x[5]}
	for i := range turn {
		h := p.ends[i].h
		turn[i] = -2 / (1 + h*h) * x[6+i]
	}
	return omega, v, turn
}

// accelerations sets the second derivatives of m, whose first ones are known.
func (m *beamMovement) accelerations(t *tracer, b *beam, at *axlePose, shift Vec) {
	f := &t.step
	beam := movement{omega: m.omega, v: m.v}
	for i := range b.links {
		r := &b.links[i]
		arm := at.r.turn(r.b)
		f[i] = r.bend(r3.Scale(r.inv, r3.Sub(b.at(at, arm), r.a)), arm, &beam)
	}
	x := b.dragOuter(at)
	_, u := m.end(at, b.pulls, x)
	drag := r3.Sub(r3.Sub(b.at(at, x), b.drag.a), shift)
	f[4] = (r3.Dot(u, u) + r3.Dot(drag, m.bias(at, b.pulls, x))) * b.drag.inv
	f[5] = m.bendTie(b, at)
	for i := range at.ends {
		f[6+i] = m.bias(at, i, at.ends[i].wheel).Z
	}
	t.lu.solve(f, f)
	m.alpha, _, m.gain = at.rates(f)
}

func (m *beamMovement) bendTie(b *beam, at *axlePose) float64 {
	l, r := at.ends[0].arm, at.ends[1].arm
	_, left := m.end(at, 0, l)
	_, right := m.end(at, 1, r)
	u := r3.Sub(left, right)
	return (r3.Dot(u, u) + r3.Dot(r3.Sub(l, r), r3.Sub(m.bias(at, 0, l), m.bias(at, 1, r)))) / b.tie
}

// end returns the angular velocity of knuckle i, and the velocity of its point x from the
// moved reference point.
func (m *beamMovement) end(at *axlePose, i int, x Vec) (omega, v Vec) {
	e := &at.ends[i]
	omega = axpy(m.turn[i], e.dir, m.omega)
	return omega, r3.Add(r3.Add(m.v, r3.Cross(m.omega, e.foot)), r3.Cross(omega, r3.Sub(x, e.foot)))
}

// bias returns the acceleration of that point where neither beam nor kingpin gains speed.
func (m *beamMovement) bias(at *axlePose, i int, x Vec) Vec {
	e := &at.ends[i]
	arm, swing := r3.Sub(x, e.foot), r3.Scale(m.turn[i], e.dir)
	return r3.Add(centripetal(m.omega, e.foot),
		r3.Add(r3.Cross(r3.Cross(m.omega, swing), arm), centripetal(r3.Add(m.omega, swing), arm)))
}

// knuckle returns how knuckle i moves, as a left one.
func (m *beamMovement) knuckle(at *axlePose, i int) (out movement) {
	e := &at.ends[i]
	out.omega, out.v = m.end(at, i, e.wheel)
	out.alpha = r3.Add(m.alpha, axpy(m.gain[i], e.dir, r3.Cross(m.omega, r3.Scale(m.turn[i], e.dir))))
	return out.mirrored(Side(i))
}
