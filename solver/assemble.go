package solver

// Assembler makes candidates of one design. It is safe for concurrent use.
type Assembler struct {
	design Design
	units  []*unit
	places [][]dvec // of each unit, as the file has them
}

// NewAssembler checks the design once for all its candidates.
func NewAssembler(d *Design) (*Assembler, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	a := &Assembler{design: *d, units: d.Kind.layout.units(d)}
	for _, u := range a.units {
		a.places = append(a.places, u.places(d))
	}
	return a, nil
}

// Design returns the design that a was made of.
func (a *Assembler) Design() *Design { return &a.design }

// Setting returns the value, in radians, at which an absolute parameter stands in
// the design itself: its toe, camber or caster. It is NaN for another parameter.
func (a *Assembler) Setting(p Parameter, s Side) float64 {
	if !p.Absolute || p.stage != setpointStage {
		return nan
	}
	i := min(int(s), len(a.units)-1)
	set := a.units[i].setpointsOf(&a.design, a.places[i], nil)
	w := int(s) - i // the wheel's place in its unit
	switch p.set {
	case toeSetpoint:
		return set.toe[w].to.v
	case camberSetpoint:
		return set.camber[w].to.v
	}
	return set.caster.to.v
}

// Assemble returns the axle of a design with the given changes. The order of
// changes does not matter: coordinates come first, then exchanged parts, then
// setpoints are re-solved.
func Assemble(d *Design, changes []Change, hold Hold) (*Axle, error) {
	a, err := NewAssembler(d)
	if err != nil {
		return nil, err
	}
	return a.Assemble(changes, hold)
}

// Assemble returns the axle with the given changes, its static position solved:
//
//  1. Coordinates change in the file's own static position. Static toe and
//     camber stay as given; caster follows from the points.
//  2. Parts change in that same position.
//  3. Setpoints, those changed or else the values after step 1, are re-solved:
//     the knuckle stays rigid, wheel-centre height is kept, and the adjuster
//     takes up camber and caster, the tie rod toe. Setpoints that are not held
//     float, the parts keeping their lengths.
//
// It returns a [*StaticError] where no such position is found, and an
// [*InputError] where a change is no number.
func (a *Assembler) Assemble(changes []Change, hold Hold) (*Axle, error) {
	for i := range changes {
		if err := changes[i].check(); err != nil {
			return nil, err
		}
	}
	cs := make([]applied, len(changes))
	for i := range changes {
		cs[i] = applied{Change: &changes[i]}
	}
	x := &Axle{assembler: a, changes: changes, hold: hold}
	x.gear = a.gear(cs)
	x.tyreRadius = a.tyreRadius(cs)
	for i, u := range a.units {
		s, err := a.static(u, a.places[i], cs, hold)
		if err != nil {
			return nil, err
		}
		x.static = append(x.static, s)
	}
	x.link()
	return x, nil
}

// stages are a unit's points and conditions on the way to its static position.
type stages struct {
	before, after []dvec
	spins         []dvec
	conditions    []condition
}

// stages applies changes to the places of u.
func (a *Assembler) stages(u *unit, places []dvec, cs []applied, hold Hold) stages {
	var s stages
	s.before = append([]dvec(nil), places...)
	u.applyPoints(s.before, cs)
	s.after = make([]dvec, len(places))
	u.applyParts(s.before, s.after, a.design.StudAxis, cs)
	for i := range u.wheels {
		w := &u.wheels[i]
		s.spins = append(s.spins, fixed(w.spinOf(a.design.Toe[w.side], a.design.Camber[w.side])))
	}
	set := u.setpointsOf(&a.design, s.before, cs)
	s.conditions = u.conditions(hold.with(cs), &set, s.before)
	return s
}

// staticUnit is a unit in its solved static position.
type staticUnit struct {
	u     *unit
	q     state
	pts   []Vec // in the unit's frame
	spins []Vec
	// untouched says that no part or setpoint was changed: the static position
	// is that of the points as they stand.
	untouched bool
}

// static solves the static position of u.
func (a *Assembler) static(u *unit, places []dvec, cs []applied, hold Hold) (*staticUnit, error) {
	s := a.stages(u, places, cs, hold)
	p := newStaticPath(u, s.before, s.after, s.spins, s.conditions)
	q, err := p.solve()
	if err != nil {
		return nil, err
	}
	p.put(&q, constant(1))
	if err := u.takeUp(p.c.pts, s.before); err != nil {
		return nil, err
	}
	out := &staticUnit{u: u, q: q, pts: values(p.c.pts), spins: values(p.c.spins)}
	out.untouched = onlyPoints(cs)
	return out, nil
}

func values(xs []dvec) []Vec {
	out := make([]Vec, len(xs))
	for i := range xs {
		out[i] = xs[i].v
	}
	return out
}

// gear returns the steering gear with its points changed.
func (a *Assembler) gear(cs []applied) Gear {
	g := a.design.Gear
	for _, c := range cs {
		if ref := &c.Parameter.point; ref.group == gearPoint {
			g.Points[ref.index] = fixed(g.Points[ref.index]).plus(fixed(along(int(c.Parameter.move))).times(c.amount())).v
		}
	}
	return g
}

func (a *Assembler) tyreRadius(cs []applied) float64 {
	r := a.design.TyreRadius
	for _, c := range cs {
		if c.Parameter.stage == vehicleStage {
			r += c.Value
		}
	}
	return r
}

// onlyPoints reports whether changes are all of coordinates.
func onlyPoints(cs []applied) bool {
	for _, c := range cs {
		if c.Parameter.stage == partStage || c.Parameter.stage == setpointStage {
			return false
		}
	}
	return true
}
