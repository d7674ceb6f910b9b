package ui

import (
	"toewright/app/model"
	"toewright/solver"
)

// typed keeps what is being typed, and brings the curve of the wheel whose reading that is
// onto a narrow stage.
func (p *Panels) typed() {
	p.Kept.noteDraft(p)
	side := p.Desk.View.Side
	switch p.reading.keypad.At {
	case model.LeftField:
		side = solver.Left
	case model.RightField:
		side = solver.Right
	}
	if side != p.Desk.View.Side {
		p.Desk.View.Side = side
		if p.Drawing != nil {
			p.Drawing.request()
		}
	}
}
