package solver

import "gonum.org/v1/gonum/spatial/r3"

// WithoutClosedForm returns x moved by the general path follower alone: the same
// six-freedom knuckle on its links, in equations of their own.
func WithoutClosedForm(x *Axle) *Axle {
	y := *x
	for s, c := range x.corners {
		if c != nil {
			d := *c
			d.closed = nil
			y.corners[s] = &d
		}
	}
	return &y
}

// Assemble returns the axle of a design with the given changes.
func Assemble(d *Design, changes []Change, hold Hold) (*Axle, error) {
	a, err := NewAssembler(d)
	if err != nil {
		return nil, err
	}
	return a.Assemble(changes, hold)
}

// HasClosedForm reports whether both corners of x are solved without iteration.
func HasClosedForm(x *Axle) bool {
	return x.beam == nil && x.corners[Left].closed != nil && x.corners[Right].closed != nil
}

// InClosedForm reports whether w, after a sweep of one corner, still follows its
// closed form, and not the general path follower.
func InClosedForm(w *Workspace) bool { return w.tracer.closed.form != nil }

// ErrorGain returns by how much a knuckle turns, in radians, for an error of 1 mm
// in the worst combination of its links, where a corner of x stands under its
// wheel's travel: the condition of the linkage, about 1/100 for a healthy one.
func ErrorGain(x *Axle, s Side, steer, travel float64) float64 {
	ws := NewWorkspace()
	if err := x.originOfCorner(ws, Attitude{Heave: travel, Steer: steer}, s); err != nil {
		return nan
	}
	p := cornerPath{c: x.corners[s], gear: newGearPath(x.balls[s], steer, 0), from: travel}
	var f, rate column
	var m matrix
	var lu factors
	p.linearise(&ws.origin, 0, &f, &m, &rate)
	if !lu.factor(&m, cornerUnknowns) {
		return nan
	}
	var gain [3]float64
	for i := range cornerUnknowns {
		var e column
		e[i] = 1
		lu.solve(&e, &e)
		for k := range gain {
			gain[k] += 2 * abs(e[k])
		}
	}
	return r3.Norm(Vec{X: gain[0], Y: gain[1], Z: gain[2]})
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// Movement returns the angular velocity of the knuckle of side s in the static
// position, in radians per mm of travel, and the velocity of its wheel centre.
func Movement(x *Axle, s Side) (omega, v Vec) {
	p := cornerPath{c: x.corners[s], rate: 1}
	var t tracer
	var m movement
	t.start(&p, &state{})
	t.closed.form = nil
	by := p.stand(&t, true)
	if !by.known() {
		panic("the static position is a lock")
	}
	p.movement(by, &m)
	return m.omega, m.v
}

// StaticByPath returns the points of each unit of the car with changes in its static
// position, found by following the path from the car as measured and never from near.
func StaticByPath(a *Assembler, changes []Change, hold Hold, rods *Rods) ([][]Vec, error) {
	var out [][]Vec
	w := a.borrow(changes, rods)
	for i := range a.units {
		n := &w.measured[i]
		n.known, n.sound, n.hold = true, false, w.held(hold, w.cs)
		s, err := w.static(i, hold)
		if err != nil {
			return nil, err
		}
		out = append(out, s.pts)
	}
	return out, nil // w is not given back: others may be near
}

// StaticPoints returns the points of each unit of x in its static position.
func StaticPoints(x *Axle) (out [][]Vec) {
	for _, s := range x.static {
		out = append(out, s.pts)
	}
	return out
}

// IsNear reports whether the static position of every unit of the car with changes is
// found from near where it is solved at all.
func IsNear(a *Assembler, changes []Change, hold Hold, rods *Rods) bool {
	w := a.borrow(changes, rods)
	for i := range a.units {
		lu := w.near(i, hold)
		if lu == nil {
			return false
		}
		if _, ok := w.prepare(i, w.cs, hold).solveNear(lu, &w.tracer); !ok {
			return false
		}
	}
	return true
}

// WithoutSplit returns a solid axle whose movement is answered by the general factors
// alone.
func WithoutSplit(x *Axle) *Axle {
	y, b := *x, *x.beam
	b.triple = beamTriple{} // of one row three times
	y.beam = &b
	return &y
}

// SplitServes reports whether w, after a sweep of a solid axle with instants, has its
// movement from the elimination, and not the general factors.
func SplitServes(w *Workspace) bool { return w.instant.lu == nil }
