package solver

// Tangents says how the static position of an axle moves with each of some
// parameters: exact derivatives, all setpoints re-solved. It belongs to one
// [Axle] and is immutable.
type Tangents struct {
	axle   *Axle
	params []Change
	units  [][]tangent // by unit and parameter
	moved  []pointSet  // by unit: points that any parameter moves
}

// tangent is the rate of a unit's static position by one parameter. It has no
// points where the parameter moves nothing of the unit.
type tangent struct {
	points []pointRate
	spins  []Vec // nil where no wheel turns
	// turn and shift are the rates of the upright's pose, and pins those of a solid axle's
	// kingpins: see [staticUnit].
	turn, shift Vec
	pins        [2]float64
}

// pointRate is the rate of one of a unit's points; points that stand still are
// left out.
type pointRate struct {
	i int
	d Vec
}

// of returns the rate of point i.
func (t *tangent) of(i int) Vec {
	for _, p := range t.points {
		if p.i == i {
			return p.d
		}
	}
	return Vec{}
}

// Tangents returns the derivatives of the static position by parameters, of
// which only what and which sides matter, not the value. A setpoint that floats
// in this axle has no influence. It returns a [*StaticError] where the static
// position is singular: it can be met, but only just.
func (x *Axle) Tangents(params []Change) (*Tangents, error) {
	t := &Tangents{axle: x, params: params}
	for i := range x.static {
		ts, err := x.unitTangents(i, params)
		if err != nil {
			return nil, err
		}
		t.units = append(t.units, ts)
		t.moved = append(t.moved, movedIn(ts))
	}
	return t, nil
}

// movedIn returns the points that have a rate in any of some tangents.
func movedIn(ts []tangent) (s pointSet) {
	for k := range ts {
		for i := range ts[k].points {
			s.add(ts[k].points[i].i)
		}
	}
	return s
}

// Len returns the number of parameters.
func (t *Tangents) Len() int { return len(t.params) }

// unitTangents returns the tangents of one unit.
func (x *Axle) unitTangents(unit int, params []Change) ([]tangent, error) {
	s := x.static[unit]
	w := tangentWork{x: x, unit: unit}
	defer w.release()
	out := make([]tangent, len(params))
	room := make([]pointRate, 0, len(params)+1)
	for k := range params {
		p := &params[k]
		switch {
		case !s.u.within(x.sides) || !s.u.touches(p):
		case p.Parameter.stage == pointStage && s.changed <= points:
			first := len(room)
			room = s.shifted(p, room)
			out[k].points = room[first:]
		case s.changed <= freeParts && s.u.extentOf(p, x.hold) <= freeParts:
			first := len(room)
			room = w.standing(p, room)
			out[k].points = room[first:]
		case !w.factor():
			return nil, &StaticError{Side: s.u.wheels[0].side, Axle: s.u.beam, Link: "the linkage at its lock", Share: 1}
		default:
			out[k] = w.by(p)
		}
	}
	return out, nil
}

// touches reports whether a parameter has to do with the unit at all.
func (u *unit) touches(c *Change) bool {
	switch c.Parameter.stage {
	case vehicleStage:
		return false
	case setpointStage, rodStage:
		for _, w := range u.wheels {
			if c.Sides.Includes(w.side) {
				return true
			}
		}
		return false
	}
	first, end, step := u.span(&c.Parameter.point)
	for i := first; i < end; i += step {
		if u.moves(c, i) {
			return true
		}
	}
	return false
}

// shifted appends the rates by a coordinate where the static position is the
// file's own: the point moves and nothing else does.
func (s *staticUnit) shifted(c *Change, out []pointRate) []pointRate {
	first, end, step := s.u.span(&c.Parameter.point)
	for i := first; i < end; i += step {
		if !s.u.moves(c, i) {
			continue
		}
		d := s.u.axisOf(c.Parameter.move, i).v
		out = append(out, pointRate{i, d})
		if st := s.u.strut; st != nil && i == st.top {
			out = append(out, pointRate{st.carried, d})
		}
	}
	return out
}

// tangentWork differentiates the equations of a unit's static position.
type tangentWork struct {
	x        *Axle
	unit     int
	work     *staticWork // nil before borrow
	factored bool
	lu       factors
	plain    bool // the path at hand is prepared for the axle's own changes, parts aside
	points   int  // of the unit, where moved has them with the axle's own changes
	moved    [maxUnitPoints]dvec
}

// borrow makes work ready.
func (w *tangentWork) borrow() {
	if w.work == nil {
		w.work = w.x.assembler.borrow(w.x.changes, w.x.rods)
	}
}

// release gives back what was borrowed.
func (w *tangentWork) release() {
	if w.work != nil {
		w.x.assembler.giveBack(w.work)
	}
}

// factor factors the equations at the solution, once; it returns false where they
// are singular.
func (w *tangentWork) factor() bool {
	if w.factored {
		return true
	}
	w.borrow()
	p := w.work.prepare(w.unit, w.work.cs, w.x.hold)
	var f, rate column
	var jac matrix
	p.linearise(&w.x.static[w.unit].q, 1, &f, &jac, &rate)
	if !w.lu.factor(&jac, p.size()) {
		return false
	}
	w.plain, w.factored = true, true
	return true
}

// standing appends the rates by a change that leaves the static position as the
// points have it, with and without it.
func (w *tangentWork) standing(c *Change, out []pointRate) []pointRate {
	w.borrow()
	w.plain = false
	if w.points == 0 {
		w.points = copy(w.moved[:], w.work.move(w.unit, w.work.cs))
	}
	cs := append(w.work.cs, applied{Change: c, seed: true})
	before, u := w.work.before[:w.points], w.work.assembler.units[w.unit]
	copy(before, w.moved[:])
	u.applyPoints(before, cs[len(cs)-1:])
	for i, p := range w.work.exchanged(w.unit, before, cs) {
		if p.d != (Vec{}) {
			out = append(out, pointRate{i, p.d})
		}
	}
	return out
}

// tangentOf returns the rates of what moves.
func tangentOf(c *configuration) tangent {
	t := tangent{points: make([]pointRate, 0, len(c.pts)), spins: make([]Vec, len(c.spins))}
	for i := range c.pts {
		if d := c.pts[i].d; d != (Vec{}) {
			t.points = append(t.points, pointRate{i, d})
		}
	}
	for i := range c.spins {
		t.spins[i] = c.spins[i].d
	}
	return t
}

// path returns the path with the seed that is the last of cs. The exchange of a
// part leaves setpoints and lengths as they are.
func (w *tangentWork) path(cs []applied) *staticPath {
	part := cs[len(cs)-1].Parameter.stage == partStage
	if part && w.plain {
		w.work.exchange(cs)
		return &w.work.path
	}
	w.plain = part
	return w.work.prepare(w.unit, cs, w.x.hold)
}

// by returns the tangent of a change that grows: the rate of the equations with
// the pose held, and the motion of the pose that undoes it.
func (w *tangentWork) by(c *Change) tangent {
	p := w.path(append(w.work.cs, applied{Change: c, seed: true}))
	p.put(&w.x.static[w.unit].q, constant(1))
	var b column
	for i, c := range p.conditions {
		b[i] = -c.value(&p.c).d
	}
	w.lu.solve(&b, &b)
	p.place.addMotion(&b, &p.c)
	// The same points were taken up without error when the axle was assembled.
	_ = p.u.takeUp(p.c.pts, p.before)
	t := tangentOf(&p.c)
	t.turn, t.shift = Vec{X: b[0], Y: b[1], Z: b[2]}, Vec{X: b[3], Y: b[4], Z: b[5]}
	if p.u.beam {
		t.pins = [2]float64{b[6], b[7]}
	}
	return t
}

// axpy returns k·v + w.
func axpy(k float64, v, w Vec) Vec {
	return Vec{X: k*v.X + w.X, Y: k*v.Y + w.Y, Z: k*v.Z + w.Z}
}
