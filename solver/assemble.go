package solver

import "sync"

// Assembler makes candidates of one design. It is safe for concurrent use.
type Assembler struct {
	design Design
	units  []*unit
	places [][]dvec // of each unit, as the file has them
	spins  [][]dvec // likewise: the wheels' spin axes
	still  []*staticUnit
	racks  [2]innerBall // of each side; nil where the gear is not a rack
	idle   sync.Pool    // of *staticWork
}

// NewAssembler checks the design once for all its candidates.
func NewAssembler(d *Design) (*Assembler, error) {
	units, err := d.checkedUnits()
	if err != nil {
		return nil, err
	}
	a := &Assembler{design: *d, units: units}
	for _, u := range a.units {
		u.free = u.freePoints()
		a.places = append(a.places, u.places(d))
		a.spins = append(a.spins, u.staticSpins(d))
	}
	if a.design.Gear.Kind == Rack {
		for _, s := range Sides {
			a.racks[s] = a.design.Gear.inner(Vec{}, s)
		}
	}
	w := a.borrow(nil, nil)
	defer a.giveBack(w)
	for i := range a.units {
		a.still = append(a.still, w.asMeasured(i))
	}
	return a, nil
}

// staticSpins returns the spin axis of each wheel in the file's own position.
func (u *unit) staticSpins(d *Design) []dvec {
	var spins []dvec
	for i := range u.wheels {
		w := &u.wheels[i]
		spins = append(spins, fixed(w.spinOf(d.Toe[w.side], d.Camber[w.side])))
	}
	return spins
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
// [*InputError] where a change is not a number or leaves no steering axis that rises.
func (a *Assembler) Assemble(changes []Change, hold Hold) (*Axle, error) {
	return a.AssembleSides(BothSides, changes, hold)
}

// AssembleSides is [Assembler.Assemble] where no more than the given sides are
// looked at: of an independent suspension the other side is left as the base car
// has it.
func (a *Assembler) AssembleSides(sides Selection, changes []Change, hold Hold) (*Axle, error) {
	return a.assemble(sides, changes, hold, nil)
}

// assemble is [Assembler.AssembleBuilt], or without rods [Assembler.AssembleSides].
func (a *Assembler) assemble(sides Selection, changes []Change, hold Hold, rods *Rods) (*Axle, error) {
	x := &Axle{}
	if err := a.Reassemble(x, sides, changes, hold, rods); err != nil {
		return nil, err
	}
	return x, nil
}

// Reassemble makes x the axle that [Assembler.AssembleBuilt] returns, or without rods
// [Assembler.AssembleSides], in the memory that x has: for series and searches, which
// look at one car after the other. What was taken of x before, its tangents too, ends
// with it. After an error x is not an axle until it is assembled again.
func (a *Assembler) Reassemble(x *Axle, sides Selection, changes []Change, hold Hold, rods *Rods) error {
	for i := range changes {
		if err := changes[i].check(); err != nil {
			return err
		}
	}
	w := a.borrow(changes, rods)
	defer a.giveBack(w)
	*x = Axle{assembler: a, changes: changes, hold: hold, rods: rods, sides: sides, room: x.room}
	w.room = &x.room
	x.gear = a.gear(w.cs)
	x.tyreRadius = a.tyreRadius(w.cs)
	x.static = x.units[:len(a.units)]
	for i, u := range a.units {
		x.static[i] = a.still[i]
		if !u.within(sides) {
			continue
		}
		s, err := w.static(i, hold)
		if err != nil {
			return err
		}
		if err := u.checkAxis(func(i int) Vec { return s.pts[i] }); err != nil {
			return err
		}
		x.static[i] = s
	}
	x.link()
	return nil
}

// within reports whether a wheel of u is among sides.
func (u *unit) within(sides Selection) bool { return u.beam || sides.Includes(u.wheels[0].side) }

// staticUnit is a unit in its solved static position, and what moves from there.
type staticUnit struct {
	u       *unit
	q       state
	pts     []Vec // in the unit's frame
	spins   []Vec
	changed extent // how far changes have reached

	corner *corner // of an independent suspension
	beam   *beam   // of a solid axle
}

// static returns the static position of unit i with the changes of w.
func (w *staticWork) static(i int, hold Hold) (*staticUnit, error) {
	switch e := w.assembler.units[i].extent(w.cs, hold); {
	case w.rods != nil: // which may not fit the points
	case e == nothing:
		return w.assembler.still[i], nil
	case e == points:
		return w.asMeasured(i), nil
	case e == freeParts:
		return w.asExchanged(i), nil
	}
	lu := w.near(i, hold)
	p := w.prepare(i, w.cs, hold)
	q, err := w.solve(i, hold, lu)
	if err != nil {
		return nil, err
	}
	if err := p.u.takeUp(p.c.pts, p.before); err != nil {
		return nil, err
	}
	s := w.stand(i, p.c.pts, p.c.spins)
	s.q, s.changed = q, parts
	return s, nil
}

// asMeasured returns the static position of unit i where no more than coordinates
// are changed: the points as they then stand.
func (w *staticWork) asMeasured(i int) *staticUnit {
	s := w.stand(i, w.move(i, w.cs), w.assembler.spins[i])
	s.changed = points
	return s
}

// asExchanged returns the static position of unit i where no part is exchanged but
// such that no more than rods that set toe hang on it.
func (w *staticWork) asExchanged(i int) *staticUnit {
	s := w.stand(i, w.fit(i, w.cs), w.assembler.spins[i])
	s.changed = freeParts
	return s
}

// stand returns unit i with its points where they are given.
func (w *staticWork) stand(i int, pts, spins []dvec) *staticUnit {
	u := w.assembler.units[i]
	if !u.beam {
		c := w.corner(i)
		c.stand(u, pts, spins)
		return &c.staticUnit
	}
	s := &staticUnit{u: u, pts: values(pts), spins: values(spins)}
	s.beam = newBeam(s)
	return s
}

// staticCorner is a corner in its static position with all that belongs to it, in
// one piece of memory: a series makes hundreds of thousands.
type staticCorner struct {
	staticUnit
	points [maxCornerPoints]Vec
	axis   [1]Vec
	moving corner
	form   closedForm
}

// corner returns memory for unit i: what an axle that is assembled again had for it.
func (w *staticWork) corner(i int) *staticCorner {
	if w.room == nil {
		return &staticCorner{}
	}
	if w.room[i] == nil {
		w.room[i] = &staticCorner{}
	}
	return w.room[i]
}

// stand makes c the corner u with its points where they are given.
func (c *staticCorner) stand(u *unit, pts, spins []dvec) {
	*c = staticCorner{}
	s := &c.staticUnit
	s.u, s.pts, s.spins, s.corner = u, c.points[:len(pts)], c.axis[:], &c.moving
	copyValues(s.pts, pts)
	copyValues(s.spins, spins)
	s.corner.build(s, &c.form)
}

func copyValues(out []Vec, xs []dvec) {
	for i := range xs {
		out[i] = xs[i].v
	}
}

func values(xs []dvec) []Vec {
	out := make([]Vec, len(xs))
	copyValues(out, xs)
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
