package solver

// maxUnitPoints bounds the points of a unit: those of a solid axle.
const maxUnitPoints = axleDrag + 2

// staticWork is the memory in which a unit's static position is solved.
type staticWork struct {
	assembler *Assembler
	cs        []applied         // the changes it was borrowed for
	rods      *Rods             // of a car as built; nil where static toe may be held
	room      *[2]*staticCorner // memory of the axle assembled, by unit; nil where it gets new
	path      staticPath
	equations equations
	tracer    tracer
	memo      *staticMemo // nil until many were solved
	solved    int
	measured  nearFactors

	before, after, from, placed [maxUnitPoints]dvec
	spins                       [2]dvec
}

// borrow returns memory in which changes are ready to be applied, to a car whose
// rods are given where it is taken as built. It allocates only where none has been given back.
func (a *Assembler) borrow(changes []Change, rods *Rods) *staticWork {
	w, ok := a.idle.Get().(*staticWork)
	if !ok {
		w = &staticWork{assembler: a}
	}
	w.cs, w.rods = w.cs[:0], rods
	for i := range changes {
		w.cs = append(w.cs, applied{Change: &changes[i]})
	}
	return w
}

// giveBack ends the use of w.
func (a *Assembler) giveBack(w *staticWork) {
	w.room = nil
	a.idle.Put(w)
}

// move sets w.before to the points of unit i with the coordinates that cs change.
func (w *staticWork) move(i int, cs []applied) []dvec {
	before := w.before[:len(w.assembler.places[i])]
	copy(before, w.assembler.places[i])
	w.assembler.units[i].applyPoints(before, cs)
	return before
}

// fit returns the points of unit i with the coordinates and the parts that cs
// change, in the position in which the points stand.
func (w *staticWork) fit(i int, cs []applied) []dvec {
	return w.exchanged(i, w.move(i, cs), cs)
}

// exchanged returns the points of unit i with the parts that cs change, from before.
func (w *staticWork) exchanged(i int, before []dvec, cs []applied) []dvec {
	after := w.after[:len(before)]
	w.assembler.units[i].applyParts(before, after, w.assembler.design.StudAxis, cs)
	return after
}

// prepare returns the path from unit i as its points stand to the unit with the
// changes cs. It is valid until the next call.
func (w *staticWork) prepare(i int, cs []applied, hold Hold) *staticPath {
	a, u, p := w.assembler, w.assembler.units[i], &w.path
	p.u, p.before = u, w.move(i, cs)
	n := len(p.before)
	p.after = w.after[:n]
	p.place.u, p.place.from, p.place.spins = u, w.from[:n], a.spins[i]
	p.c.u, p.c.pts, p.c.spins = u, w.placed[:n], w.spins[:len(a.spins[i])]
	p.c.before = p.before
	set := u.setpointsOf(&a.design, p.before, cs)
	if hold = w.held(hold, cs); hold&HoldToe == 0 {
		set.setRods(u, w.rods, p.before, cs)
	}
	w.equations.set(u, hold, &set, p.before)
	p.conditions = w.equations.list
	w.exchange(cs)
	return p
}

// held returns what is re-solved of a car that is to hold h: static toe is not on a
// car as built.
func (w *staticWork) held(h Hold, cs []applied) Hold {
	h = h.with(cs)
	if w.rods != nil {
		h &^= HoldToe
	}
	return h
}

// exchange sets the parts of the path prepared last to those of cs, which differ
// from the changes it was prepared for in nothing else.
func (w *staticWork) exchange(cs []applied) {
	w.path.u.applyParts(w.path.before, w.path.after, w.assembler.design.StudAxis, cs)
}
