package solver

import "gonum.org/v1/gonum/spatial/r3"

// beamGradient is the derivative of both toes of a solid axle, in one pose, by
// everything that the pose depends on.
type beamGradient struct{ toes [2]axleToe }

// axleToe is the derivative of one wheel's toe.
type axleToe struct {
	pts    [axlePoints]Vec // by the unit's points, static
	spins  [2]Vec          // by the static spin axes
	shift  Vec             // by a displacement of the drag link's inner ball
	travel float64         // by the travel asked of the sweep
}

// at sets g to the derivatives in the pose in which t stands on the path. As for
// a corner, the loads in the links under a unit moment on the toe say what each of
// them contributes. It returns false at a lock.
func (g *beamGradient) at(t *tracer, path *beamPath, s *staticUnit) bool {
	t.sys.linearise(&t.q, t.s, &t.f, &t.jac, &t.rate)
	if !t.lu.factor(&t.jac, t.n) {
		return false
	}
	p := beamPull{b: path.b, at: path.b.poseOf(&t.q), s: s}
	for i := range g.toes {
		g.toes[i] = axleToe{}
		p.toe = &g.toes[i]
		loads := p.spin(i)
		t.lu.solveTransposed(&loads, &loads)
		p.toe.travel = -product(&loads, &t.rate, t.n)
		p.links(&loads)
		p.drag(loads[4], path, t.s)
		p.tie(loads[5])
		for w := range path.b.ends {
			p.height(w, loads[6+w])
		}
	}
	return true
}

// beamPull gathers the derivative of one toe: forces on points in the pose, taken
// back to where the points stand in the static position.
type beamPull struct {
	b   *beam
	at  axlePose
	s   *staticUnit
	toe *axleToe
}

// spin adds what the toe of wheel i is by its spin axis with the pose held, and
// returns the toe's derivative by the pose.
func (p *beamPull) spin(i int) column {
	k, e := &p.b.ends[i], &p.at.ends[i]
	loads, slope := p.b.toeRow(&p.at, i)
	now := p.at.r.back(slope)
	p.toe.spins[i] = about(k.dir, now, -e.h)
	p.lean(i, k.spin, now)
	return loads
}

// toeRow returns the derivative of the toe of wheel i by the pose, and by its spin axis
// there.
func (b *beam) toeRow(p *axlePose, i int) (loads column, slope Vec) {
	e, spin := &p.ends[i], b.spinOf(p, i)
	slope = Side(i).Mirrored(toeSlope(Side(i).Mirrored(spin)))
	m := r3.Cross(spin, slope)
	l := pullback(p.g, m)
	loads = column{l.X, l.Y, l.Z}
	loads[6+i] = 2 / (1 + e.h*e.h) * r3.Dot(e.dir, m)
	return loads, slope
}

// links adds the four links of the beam. A link keeps its static length, so that
// its own direction there counts against the one in the pose.
func (p *beamPull) links(loads *column) {
	for i := range p.b.links {
		r, spec := &p.b.links[i], &p.s.u.rods[i]
		force := r3.Scale(-loads[i]*r.inv, r3.Sub(p.b.at(&p.at, p.at.r.turn(r.b)), r.a))
		p.onBeam(spec.outer, force)
		p.add(spec.inner, r3.Scale(-1, force))
		p.length(spec, r3.Scale(-loads[i]*r.inv, r.static))
	}
}

// drag adds the drag link.
func (p *beamPull) drag(load float64, path *beamPath, s float64) {
	r, spec := &p.b.drag, &p.s.u.steer[dragLinkRod]
	shift, _ := path.gear.shift(s)
	d := r3.Sub(r3.Sub(p.b.at(&p.at, p.b.dragOuter(&p.at)), r.a), shift)
	force := r3.Scale(-load*r.inv, d)
	p.onKnuckle(p.b.pulls, spec.outer, r.b, force)
	p.toe.shift = r3.Scale(-1, force)
	p.add(spec.inner, p.toe.shift)
	p.length(spec, r3.Scale(-load*r.inv, r.static))
}

// tie adds the tie rod.
func (p *beamPull) tie(load float64) {
	spec := p.s.u.tie()
	force := r3.Scale(-load/p.b.tie, r3.Sub(p.at.ends[Left].arm, p.at.ends[Right].arm))
	p.onKnuckle(int(Left), spec.outer, p.b.ends[Left].arm, force)
	p.onKnuckle(int(Right), spec.inner, p.b.ends[Right].arm, r3.Scale(-1, force))
	p.length(spec, r3.Scale(-load/p.b.tie, r3.Sub(p.s.pts[spec.outer], p.s.pts[spec.inner])))
}

// height adds the height of wheel w, which counts from the static one.
func (p *beamPull) height(w int, load float64) {
	force := r3.Scale(-load, up)
	centre := p.s.u.wheels[w].centre
	p.onKnuckle(w, centre, p.b.ends[w].wheel, force)
	p.add(centre, r3.Scale(-1, force))
}

// length takes off what a rod's length in the static position is by its ends.
func (p *beamPull) length(spec *rodSpec, force Vec) {
	p.add(spec.outer, r3.Scale(-1, force))
	p.add(spec.inner, force)
}

func (p *beamPull) add(i int, v Vec) { p.toe.pts[i] = r3.Add(p.toe.pts[i], v) }

// onBeam takes back a force on point i of the beam.
func (p *beamPull) onBeam(i int, force Vec) {
	now := p.at.r.back(force)
	p.add(i, now)
	p.carry(r3.Sub(force, now))
}

// carry adds what the beam's reference point, midway between the wheel centres,
// takes of a force.
func (p *beamPull) carry(force Vec) {
	for w := range p.s.u.wheels {
		p.add(p.s.u.wheels[w].centre, r3.Scale(0.5, force))
	}
}

// onKnuckle takes back a force on point i of knuckle w, at arm from the foot of
// its kingpin in the static position.
func (p *beamPull) onKnuckle(w, i int, arm, force Vec) {
	now := p.at.r.back(force)
	p.carry(r3.Sub(force, now))
	back := about(p.b.ends[w].dir, now, -p.at.ends[w].h)
	p.add(i, back)
	p.add(p.s.u.wheels[w].axis.lower, r3.Sub(now, back))
	p.lean(w, arm, now)
}

// lean adds what a force on the end of arm is by the direction of kingpin w about
// which arm has turned: the derivative of [about] by its axis.
func (p *beamPull) lean(w int, arm, force Vec) {
	k, h := &p.b.ends[w], p.at.ends[w].h
	d := 1 / (1 + h*h)
	c, s := (1-h*h)*d, 2*h*d
	by := axpy(s, r3.Cross(arm, force), r3.Scale((1-c)*r3.Dot(k.dir, arm), force))
	by = axpy((1-c)*r3.Dot(force, k.dir), arm, by)
	by = r3.Scale(1/r3.Norm(k.rise), axpy(-r3.Dot(k.dir, by), k.dir, by))
	axis := &p.s.u.wheels[w].axis
	p.add(axis.upper, by)
	p.add(axis.lower, r3.Scale(-1, by))
}

// dot returns the derivative by a parameter whose static tangent is t, and which
// displaces the inner ball of the drag link at the rate shift beside.
func (g *axleToe) dot(t *tangent, shift Vec) float64 {
	sum := r3.Dot(g.shift, shift)
	for i := range t.spins {
		sum += r3.Dot(g.spins[i], t.spins[i])
	}
	for i := range t.points {
		p := &t.points[i]
		sum += r3.Dot(g.pts[p.i], p.d)
	}
	return sum
}
