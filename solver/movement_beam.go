package solver

import "gonum.org/v1/gonum/spatial/r3"

// beamMovement is how a solid axle moves along a path: first and second
// derivatives by the path parameter, in V.
type beamMovement struct {
	omega, v, alpha, a Vec        // of the beam and of its reference point
	turn, gain         [2]float64 // of the kingpins: rates of their angles
}

// endMovement is how a point of a knuckle on its kingpin moves.
type endMovement struct {
	spin Vec // angular velocity of the knuckle
	v    Vec // velocity of the point
	bias Vec // its acceleration where neither beam nor kingpin gains speed
}

// velocities sets the first derivatives of m in the pose at for wheel travels
// that change at the given rates and the gear at rest. t holds the factors of the
// equations there.
func (m *beamMovement) velocities(t *tracer, at *axlePose, travel [2]float64) {
	t.step = column{6: -travel[0], 7: -travel[1]}
	t.lu.solve(&t.step, &t.step)
	m.omega, m.v, m.turn = at.rates(&t.step)
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
	for i := range b.links {
		r := &b.links[i]
		arm := at.r.turn(r.b)
		u := r3.Add(m.v, r3.Cross(m.omega, arm))
		f[i] = r.bend(r3.Sub(b.at(at, arm), r.a), u, centripetal(m.omega, arm))
	}
	x := b.dragOuter(at)
	drag := m.end(at, b.pulls, x)
	f[4] = b.drag.bend(r3.Sub(r3.Sub(b.at(at, x), b.drag.a), shift), drag.v, drag.bias)
	f[5] = m.bendTie(b, at)
	for i := range at.ends {
		f[6+i] = m.end(at, i, at.ends[i].wheel).bias.Z
	}
	t.lu.solve(f, f)
	m.alpha, m.a, m.gain = at.rates(f)
}

func (m *beamMovement) bendTie(b *beam, at *axlePose) float64 {
	left, right := m.end(at, 0, at.ends[0].arm), m.end(at, 1, at.ends[1].arm)
	d, u := r3.Sub(at.ends[0].arm, at.ends[1].arm), r3.Sub(left.v, right.v)
	return (r3.Dot(u, u) + r3.Dot(d, r3.Sub(left.bias, right.bias))) / b.tie
}

// end returns how the point x, from the moved reference point, of knuckle i moves.
func (m *beamMovement) end(at *axlePose, i int, x Vec) endMovement {
	e := &at.ends[i]
	arm, swing := r3.Sub(x, e.foot), r3.Scale(m.turn[i], e.dir)
	s := r3.Add(m.omega, swing)
	return endMovement{
		spin: s,
		v:    r3.Add(r3.Add(m.v, r3.Cross(m.omega, e.foot)), r3.Cross(s, arm)),
		bias: r3.Add(centripetal(m.omega, e.foot),
			r3.Add(r3.Cross(r3.Cross(m.omega, swing), arm), centripetal(s, arm))),
	}
}

// knuckle returns how knuckle i moves, as a left one.
func (m *beamMovement) knuckle(at *axlePose, i int) movement {
	e := &at.ends[i]
	w := m.end(at, i, e.wheel)
	swing, gain := r3.Scale(m.turn[i], e.dir), r3.Scale(m.gain[i], e.dir)
	alpha := r3.Add(m.alpha, r3.Add(gain, r3.Cross(m.omega, swing)))
	a := r3.Add(r3.Add(m.a, r3.Cross(m.alpha, e.wheel)), r3.Cross(gain, r3.Sub(e.wheel, e.foot)))
	return movement{omega: w.spin, v: w.v, alpha: alpha, a: r3.Add(a, w.bias)}.mirrored(Side(i))
}
