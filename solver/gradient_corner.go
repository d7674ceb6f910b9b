package solver

import "gonum.org/v1/gonum/spatial/r3"

// cornerGradient is the derivative of a corner's toe, in one pose, by everything
// that the pose depends on.
type cornerGradient struct {
	wanted pointSet             // points by which it is asked for: the rest may be left out
	pts    [maxCornerPoints]Vec // by the unit's points, static
	spin   Vec                  // by the static spin axis
	shift  Vec                  // by a displacement of the tie rod's inner ball

	travel float64 // by the travel asked of the sweep
}

// maxCornerPoints bounds the hardpoints of a corner: eleven of a multi-link.
const maxCornerPoints = 12

// toeGradient sets g to the derivative of the toe in the pose in which t stands.
// One solve with the transposed Jacobian serves every parameter: the loads in
// the links under a unit moment on the toe say what each of them contributes.
func (c *corner) toeGradient(t *tracer, path *cornerPath, u *unit, g *cornerGradient) bool {
	e := &path.eq
	path.constrain(&t.q, t.s, e)
	spin := e.at.r.turn(c.spin)
	slope := toeSlope(spin)
	loads, ok := path.loads(t, r3.Cross(spin, slope))
	if !ok {
		return false
	}
	*g = cornerGradient{wanted: g.wanted, spin: e.at.r.back(slope)}
	for i := range loads {
		g.travel -= loads[i] * e.rate[i]
	}
	centre := u.wheels[0].centre
	w := &g.pts[centre]
	add := func(r *rod, spec *rodSpec, i int) {
		if g.wanted.has(spec.outer) || g.wanted.has(spec.inner) || g.wanted.has(centre) {
			r.addGradient(-loads[i], e.w[i].force, &e.at, &g.pts[spec.outer], &g.pts[spec.inner], w)
		}
	}
	for i := range c.n {
		add(&c.rods[i], &u.rods[i], i)
	}
	add(&c.tie, u.tie(), tieRow)
	g.shift = r3.Scale(loads[tieRow], e.w[tieRow].force)
	if c.strut != nil {
		c.strut.addGradient(&e.at, loads[c.n], loads[c.n+1], u.strut, g, w)
	}
	return true
}

// loads returns the loads in the links, for the constraints at hand, under a
// moment on the knuckle. It returns false at a lock. t lends its memory.
func (p *cornerPath) loads(t *tracer, moment Vec) (l [cornerUnknowns]float64, ok bool) {
	by, ok := p.answers(t)
	if !ok {
		return l, false
	}
	if by.lu == nil {
		return p.split.loads(&p.eq.w, moment), true
	}
	m := pullback(p.eq.at.g, moment)
	b := column{m.X, m.Y, m.Z}
	t.lu.solveTransposed(&b, &b)
	copy(l[:], b[:cornerUnknowns])
	return l, true
}

// toeSlope returns the derivative of the toe by the spin axis of a left wheel.
func toeSlope(e Vec) Vec {
	n := 1 / (e.X*e.X + e.Y*e.Y)
	return Vec{X: e.Y * n, Y: -e.X * n}
}

// addGradient adds k times the derivative of the rod's stretch by the static
// places of its outer and inner joint and of the wheel centre; d is the unit
// vector along the rod in pose p.
//
// The rod's length is that of its static position, so its own direction there
// counts against the one in the pose.
func (r *rod) addGradient(k float64, d Vec, p *pose, outer, inner, wheel *Vec) {
	now := p.r.back(d)
	was := r3.Scale(r.inv, r.static)
	*outer = axpy(k, r3.Sub(now, was), *outer)
	*inner = axpy(k, r3.Sub(was, d), *inner)
	*wheel = axpy(k, r3.Sub(d, now), *wheel)
}

// addGradient adds the share of the strut's two constraints under the loads x
// and y.
func (s *strut) addGradient(p *pose, x, y float64, spec *strutSpec, g *cornerGradient, wheel *Vec) {
	on, dir := s.pierce(p)
	force := Vec{X: x, Y: y, Z: -(x*dir.X + y*dir.Y) / dir.Z}
	// The axis runs from lower to carried; share is how far along it the mount
	// stands in this pose.
	lower := p.r.turn(s.on)
	share := (on.Z - lower.Z) / (dir.Z * s.span)
	now := p.r.back(force)
	g.pts[spec.lower] = axpy(-(1 - share), now, g.pts[spec.lower])
	g.pts[spec.carried] = axpy(-share, now, g.pts[spec.carried])
	g.pts[spec.top] = r3.Add(g.pts[spec.top], force)
	*wheel = axpy(-1, r3.Sub(force, now), *wheel)
}

// dot returns the derivative by a parameter whose static tangent is t and which
// displaces the inner ball at the rate shift beside.
func (g *cornerGradient) dot(t *tangent, shift Vec) float64 {
	sum := r3.Dot(g.shift, shift)
	for _, d := range t.spins {
		sum += r3.Dot(g.spin, d)
	}
	for i := range t.points {
		p := &t.points[i]
		sum += r3.Dot(g.pts[p.i], p.d)
	}
	return sum
}
