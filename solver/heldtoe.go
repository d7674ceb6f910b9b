package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// heldToe is a system in which a wheel's toe is given instead of the rod that
// steers it: the motion that the rod's ball would have to follow.
type heldToe struct {
	system
	toeRow
	row        int     // of the rod that gives way
	from, rate float64 // toe, radians, and its change by s
}

// toeRow differentiates the toe of a wheel by the unknowns of its system.
type toeRow interface {
	// toeRow returns the spin axis, as of a left wheel, and the row of the
	// linear form g on that axis' velocity.
	toeRow(q *state, s float64, g Vec) (spin Vec, row column)
}

// form returns the linear form on the spin axis that vanishes at the toe of s, by
// which the equation is scaled to mm.
func (h *heldToe) form(s float64) Vec {
	sin, cos := math.Sincos(h.from + s*h.rate)
	return Vec{X: angleArm * cos, Y: -angleArm * sin}
}

func (h *heldToe) residual(q *state, s float64, f *column) {
	h.system.residual(q, s, f)
	g := h.form(s)
	e, _ := h.toeRow.toeRow(q, s, g)
	f[h.row] = r3.Dot(g, e)
}

func (h *heldToe) linearise(q *state, s float64, f *column, jac *matrix, rate *column) {
	h.system.linearise(q, s, f, jac, rate)
	g := h.form(s)
	e, row := h.toeRow.toeRow(q, s, g)
	f[h.row], jac[h.row] = r3.Dot(g, e), row
	rate[h.row] = h.rate * (g.Y*e.X - g.X*e.Y)
}

func (p *cornerPath) toeRow(q *state, s float64, g Vec) (Vec, column) {
	at := p.c.poseOf(q, p.from+s*p.rate)
	e := at.r.turn(p.c.spin)
	m := pullback(at.g, r3.Cross(e, g))
	return e, column{m.X, m.Y, m.Z}
}

// toeRow is that of the wheel whose knuckle the drag link pulls.
func (p *beamPath) toeRow(q *state, _ float64, g Vec) (Vec, column) {
	at := p.b.poseOf(q)
	side := Side(p.b.pulls)
	k, e := &p.b.ends[side], &at.ends[side]
	spin := at.r.turn(about(k.dir, k.spin, e.h))
	moment := r3.Cross(spin, side.Mirrored(g))
	m := pullback(at.g, moment)
	row := column{m.X, m.Y, m.Z}
	row[6+side] = 2 / (1 + e.h*e.h) * r3.Dot(e.dir, moment)
	return side.Mirrored(spin), row
}
