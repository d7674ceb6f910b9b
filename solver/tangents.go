package solver

// Tangents says how the static position of an axle moves with each of some
// parameters: exact derivatives, all setpoints re-solved. It belongs to one
// [Axle] and is immutable.
type Tangents struct {
	axle   *Axle
	params []Change
	units  [][]tangent // by unit and parameter
}

// tangent is the rate of a unit's static position by one parameter.
type tangent struct {
	pts, spins []Vec
	still      bool // the parameter moves nothing of this unit
}

// Tangents returns the derivatives of the static position by parameters, of
// which only what and which sides matter, not the value. A setpoint that floats
// in this axle has no influence. It returns a [*StaticError] where the static
// position is singular: it can be met, but only just.
func (x *Axle) Tangents(params []Change) (*Tangents, error) {
	t := &Tangents{axle: x, params: params}
	for i, s := range x.static {
		ts, err := x.unitTangents(s, x.assembler.places[i], params)
		if err != nil {
			return nil, err
		}
		t.units = append(t.units, ts)
	}
	return t, nil
}

// Len returns the number of parameters.
func (t *Tangents) Len() int { return len(t.params) }

// unitTangents returns the tangents of one unit.
func (x *Axle) unitTangents(s *staticUnit, places []dvec, params []Change) ([]tangent, error) {
	cs := make([]applied, len(x.changes), len(x.changes)+1)
	for i := range x.changes {
		cs[i] = applied{Change: &x.changes[i]}
	}
	var w *tangentWork
	out := make([]tangent, len(params))
	for k := range params {
		p := &params[k]
		if !s.u.touches(p) {
			out[k].still = true
			continue
		}
		if p.Parameter.stage == pointStage && s.untouched {
			out[k] = s.shifted(p)
			continue
		}
		if w == nil {
			w = newTangentWork(x, s, places, cs)
			if w == nil {
				return nil, &StaticError{Side: s.u.wheels[0].side, Axle: s.u.beam, Link: "the linkage at its lock", Share: 1}
			}
		}
		out[k] = w.by(append(cs, applied{Change: p, seed: true}))
	}
	return out, nil
}

// touches reports whether a parameter has to do with the unit at all.
func (u *unit) touches(c *Change) bool {
	if c.Parameter.stage == setpointStage {
		for _, w := range u.wheels {
			if c.Sides.Includes(w.side) {
				return true
			}
		}
		return false
	}
	for i := range u.points {
		if u.moves(c, i) {
			return true
		}
	}
	return false
}

// shifted returns the tangent of a coordinate where the static position is the
// file's own: the point moves and nothing else does.
func (s *staticUnit) shifted(c *Change) tangent {
	t := tangent{pts: make([]Vec, len(s.pts)), spins: make([]Vec, len(s.spins))}
	for i := range s.u.points {
		if s.u.moves(c, i) {
			t.pts[i] = s.u.axisOf(c.Parameter.move, i).v
		}
	}
	if st := s.u.strut; st != nil {
		t.pts[st.carried] = t.pts[st.top]
	}
	return t
}

// tangentWork differentiates the equations of a unit's static position.
type tangentWork struct {
	x      *Axle
	s      *staticUnit
	places []dvec
	lu     factors
	basis  []tangent // motion of the points with each unknown
}

// newTangentWork factors the equations at the solution; nil where they are
// singular.
func newTangentWork(x *Axle, s *staticUnit, places []dvec, cs []applied) *tangentWork {
	w := &tangentWork{x: x, s: s, places: places}
	st := x.assembler.stages(s.u, places, cs, x.hold)
	p := newStaticPath(s.u, st.before, st.after, st.spins, st.conditions)
	var f, rate column
	var jac matrix
	p.linearise(&s.q, 1, &f, &jac, &rate)
	if !w.lu.factor(&jac, p.size()) {
		return nil
	}
	for k := range p.size() {
		p.place.rates(k, &p.c)
		w.basis = append(w.basis, tangent{pts: rates(p.c.pts), spins: rates(p.c.spins)})
	}
	return w
}

func rates(xs []dvec) []Vec {
	out := make([]Vec, len(xs))
	for i := range xs {
		out[i] = xs[i].d
	}
	return out
}

// by returns the tangent of the change among cs that grows: the rate of the
// equations with the pose held, and the motion of the pose that undoes it.
func (w *tangentWork) by(cs []applied) tangent {
	u := w.s.u
	st := w.x.assembler.stages(u, w.places, cs, w.x.hold)
	p := newStaticPath(u, st.before, st.after, st.spins, st.conditions)
	p.put(&w.s.q, constant(1))
	var b column
	for i, c := range p.conditions {
		b[i] = -c.value(&p.c).d
	}
	w.lu.solve(&b, &b)
	for k, m := range w.basis {
		for i := range p.c.pts {
			p.c.pts[i].d = axpy(b[k], m.pts[i], p.c.pts[i].d)
		}
		for i := range p.c.spins {
			p.c.spins[i].d = axpy(b[k], m.spins[i], p.c.spins[i].d)
		}
	}
	// The same points were taken up without error when the axle was assembled.
	_ = u.takeUp(p.c.pts, st.before)
	return tangent{pts: rates(p.c.pts), spins: rates(p.c.spins)}
}

// axpy returns k·v + w.
func axpy(k float64, v, w Vec) Vec {
	return Vec{X: k*v.X + w.X, Y: k*v.Y + w.Y, Z: k*v.Z + w.Z}
}
