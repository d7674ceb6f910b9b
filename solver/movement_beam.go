package solver

import "gonum.org/v1/gonum/spatial/r3"

// beamMovement is how a solid axle moves along a path: first and second
// derivatives by the path parameter, in V.
type beamMovement struct {
	omega, v, alpha Vec        // of the beam, v of its reference point
	turn, gain      [2]float64 // of the kingpins: rates of their angles
}

// beamStand is a solid axle where it stands: its pose, its constraints there, and what
// answers for them.
type beamStand struct {
	b     *beam
	pose  axlePose
	rows  beamRows
	split beamSplit
	lu    *factors // nil where the split answers
}

// constrain sets the constraints and what answers for them where t stands on p; in.pose
// is known. It returns false at a lock.
func (in *beamStand) constrain(t *tracer, p *beamPath) bool {
	in.b, in.lu = p.b, nil
	shift, _ := p.gear.shift(t.s)
	in.b.constrain(&in.pose, shift, &in.rows)
	if in.split.factor(in.b, &in.rows) {
		return true
	}
	in.lu = &t.lu
	p.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	return t.lu.factor(&t.jac, beamUnknowns)
}

// answer sets the rates of beam and kingpins that undo f.
func (in *beamStand) answer(f *[beamUnknowns]float64) (omega, v Vec, turn [2]float64) {
	if in.lu == nil {
		for i := range f {
			f[i] = -f[i]
		}
		return in.split.solve(in.b, &in.rows, f)
	}
	var x column
	copy(x[:], f[:])
	in.lu.solve(&x, &x)
	return in.pose.rates(&x)
}

// velocities sets the first derivatives of m for wheel travels that change at the given
// rates, the gear at rest.
func (m *beamMovement) velocities(in *beamStand, travel [2]float64) {
	m.omega, m.v, m.turn = in.answer(&[beamUnknowns]float64{heightRow: -travel[0], heightRow + 1: -travel[1]})
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
func (m *beamMovement) accelerations(in *beamStand) {
	b, at, w := in.b, &in.pose, &in.rows
	var f [beamUnknowns]float64
	beam := movement{omega: m.omega, v: m.v}
	for i := range b.links {
		r := &b.links[i]
		f[i] = r.bend(w.links[i].force, at.r.turn(r.b), &beam)
	}
	_, u := m.end(at, b.pulls, w.ball)
	f[dragRow] = r3.Dot(u, u)*b.drag.inv + r3.Dot(w.drag.force, m.bias(at, b.pulls, w.ball))
	f[beamTieRow] = m.bendTie(in)
	for i := range at.ends {
		f[heightRow+i] = m.bias(at, i, at.ends[i].wheel).Z
	}
	m.alpha, _, m.gain = in.answer(&f)
}

func (m *beamMovement) bendTie(in *beamStand) float64 {
	at := &in.pose
	l, r := at.ends[0].arm, at.ends[1].arm
	_, left := m.end(at, 0, l)
	_, right := m.end(at, 1, r)
	u := r3.Sub(left, right)
	return r3.Dot(u, u)/in.b.tie + r3.Dot(in.rows.tie, r3.Sub(m.bias(at, 0, l), m.bias(at, 1, r)))
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

// knuckle returns the velocities of knuckle i, as a left one.
func (m *beamMovement) knuckle(at *axlePose, i int) (out movement) {
	out.omega, out.v = m.end(at, i, at.ends[i].wheel)
	return out.mirrored(Side(i))
}

// turning returns how knuckle i turns, as a left one; its place is left out.
func (m *beamMovement) turning(at *axlePose, i int) (out movement) {
	swing := r3.Scale(m.turn[i], at.ends[i].dir)
	out.omega = r3.Add(m.omega, swing)
	out.alpha = r3.Add(m.alpha, axpy(m.gain[i], at.ends[i].dir, r3.Cross(m.omega, swing)))
	return out.mirrored(Side(i))
}
