package model

import (
	"toewright/internal/engine"
	"toewright/solver"
)

// Coverage is the interval of a set-up parameter that a part serves, in words.
type Coverage struct{ Label, Own, Low, High, Ends string }

// Covered writes what a part fits.
func (d *Desk) Covered(r *engine.CoversResult) (list []Coverage) {
	doc, n := d.Session.Document(), NumbersOf(d.Session.Document())
	for i := range r.Covers {
		c := &r.Covers[i]
		p, _, err := solver.FindParameter(d.Session.Cars().Design, c.Parameter)
		if err != nil {
			continue
		}
		unit := fileUnit(doc, p.Quantity)
		write := func(x engine.Number) string {
			if p.Quantity == solver.AngleQuantity {
				return n.Amount(float64(x), unit, doc.Units)
			}
			return n.LengthDecimal(doc.Units.Millimetres(float64(x)))
		}
		out := Coverage{Label: capital(p.Label) + ", " + n.ValueUnit(p), Own: write(c.Own), Low: write(c.Low), High: write(c.High), Ends: c.Problem}
		if c.Problem == "" {
			out.Ends = end(c.LowEnd, c.LowLink) + "; " + end(c.HighEnd, c.HighLink)
		}
		list = append(list, out)
	}
	return list
}

// end says what ends an interval, and what is in the way of a lock.
func end(by, link string) string {
	if link == "" {
		return by
	}
	return by + " (" + link + ")"
}
