package solver

import "gonum.org/v1/gonum/spatial/r3"

// beamGradient differentiates the toes of a solid axle in one pose.
type beamGradient struct {
	path  *staticPath // the axle's points in dual numbers, with the lengths of a sweep
	loads [2]column   // for the toe of each wheel
	slope [2]Vec      // derivative of each toe by its spin axis, in V

	travel [2]float64 // derivative of each toe by the travel asked of the sweep
	pull   [2]Vec     // and by a displacement of the drag link's inner ball
}

// newBeamGradient returns what differentiates sweeps of x.
func newBeamGradient(x *Axle) *beamGradient {
	s := x.static[0]
	n := len(s.pts)
	return &beamGradient{path: newStaticPath(s.u, make([]dvec, n), make([]dvec, n), make([]dvec, 2), nil)}
}

// at prepares the derivatives in the pose in which t stands on the path.
func (g *beamGradient) at(t *tracer, path *beamPath) bool {
	b := path.b
	t.sys.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, t.n) {
		return false
	}
	at := b.poseOf(&t.q)
	drag := path.dragDirection(&at, t.s)
	for i := range g.loads {
		k, e := &b.ends[i], &at.ends[i]
		spin := at.r.turn(about(k.dir, k.spin, e.h))
		slope := toeSlope(Side(i).mirrored(spin))
		g.slope[i] = Side(i).mirrored(slope)
		m := r3.Cross(spin, g.slope[i])
		l := pullback(at.g, m)
		g.loads[i] = column{l.X, l.Y, l.Z}
		g.loads[i][6+i] = 2 / (1 + e.h*e.h) * r3.Dot(e.dir, m)
		t.lu.solveTransposed(&g.loads[i], &g.loads[i])
		g.travel[i] = -product(&g.loads[i], &t.rate, t.n)
		g.pull[i] = r3.Scale(g.loads[i][4], drag)
	}
	return true
}

// dragDirection returns the unit vector along the drag link in a pose, from the
// gear to the knuckle.
func (p *beamPath) dragDirection(at *axlePose, s float64) Vec {
	shift, _ := p.gear.shift(s)
	d := r3.Sub(p.b.at(at, p.b.dragOuter(at)), p.b.drag.a)
	return r3.Scale(p.b.drag.inv, r3.Sub(d, shift))
}

// dot returns the derivative of each toe by a parameter with the static tangent
// t, which displaces the drag link's inner ball from where it is shifted to at
// the rate given, in the pose q.
func (g *beamGradient) dot(s *staticUnit, t *tangent, q *state, shift dvec) [2]float64 {
	p := g.path
	for i := range s.pts {
		p.before[i] = dvec{s.pts[i], t.pts[i]}
		p.after[i] = p.before[i]
	}
	for i := range s.spins {
		p.place.spins[i] = dvec{s.spins[i], t.spins[i]}
	}
	p.put(q, constant(1))
	var toe [2]float64
	for i := range toe {
		toe[i] = r3.Dot(g.slope[i], p.c.spins[i].d)
	}
	drag := s.u.rods[s.u.dragLink()]
	p.c.pts[drag.inner] = p.c.pts[drag.inner].plus(shift)
	for k := range s.u.rods {
		d := s.u.keep(k, p.before).value(&p.c).d
		toe[0] -= g.loads[0][k] * d
		toe[1] -= g.loads[1][k] * d
	}
	for w := range s.u.wheels {
		c := s.u.wheels[w].centre
		d := p.c.pts[c].d.Z - p.before[c].d.Z
		toe[0] -= g.loads[0][6+w] * d
		toe[1] -= g.loads[1][6+w] * d
	}
	return toe
}
