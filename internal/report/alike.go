package report

import (
	"slices"

	"toewright/internal/engine"
	"toewright/solver"
)

// alike reports whether both sides of every car are written with the same numbers, so
// that they are said once.
func (p *page) alike() bool {
	for i := range p.Cars {
		c := &p.Cars[i]
		if !p.sameRows(&c.Rows) || !p.sameFigures(&c.Figures) {
			return false
		}
	}
	return true
}

func (p *page) sameRows(rows *[2]engine.CarSweep) bool {
	l, r := rows[solver.Left].Positions, rows[solver.Right].Positions
	return slices.EqualFunc(l, r, func(a, b engine.Position) bool {
		return a.Travel == b.Travel && p.n.AngleNumber(a.Toe) == p.n.AngleNumber(b.Toe) && p.n.AngleNumber(a.Camber) == p.n.AngleNumber(b.Camber)
	})
}

func (p *page) sameFigures(figures *[2]engine.Compared) bool {
	l, r := &figures[solver.Left].Figures, &figures[solver.Right].Figures
	for i := range effects {
		e := &effects[i]
		if p.n.figure(e.kind, e.of(l)) != p.n.figure(e.kind, e.of(r)) {
			return false
		}
	}
	return p.n.toe(float64(l.Peak)) == p.n.toe(float64(r.Peak))
}
