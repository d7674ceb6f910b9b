package report

import (
	"math"
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
)

// loads writes what the load cases of the study make of each wheel that bears any,
// before and after.
func (p *page) loads() {
	if p.Loads == nil {
		return
	}
	p.open("section", "")
	p.element("h2", "", "Loads")
	p.open("table", "numbers effects")
	p.open("thead", "")
	p.loadHead()
	p.close("thead")
	p.open("tbody", "")
	for _, l := range p.Loads.Pairs(p.LoadsBefore) {
		p.loadRow(l.Now, l.Was)
	}
	p.close("tbody")
	p.close("table")
	p.element("p", "small", strings.Join(slices.Concat(p.Loads.Sources, p.Loads.Words()), " "))
	p.close("section")
}

// loadFigures returns the figures that the sheet has room for.
func (p *page) loadFigures() (figures []engine.LoadFigure) {
	for _, f := range p.Loads.Figures() {
		if f.Deciding {
			figures = append(figures, f)
		}
	}
	return figures
}

func (p *page) loadHead() {
	p.open("tr", "")
	p.element("th", "", "case")
	p.element("th", "unit", "side")
	for _, f := range p.loadFigures() {
		p.open("th", "")
		p.write(f.Label + " ")
		p.element("small", "", f.Unit(p.n.Style))
		p.close("th")
	}
	p.close("tr")
}

// loadRow writes the figures of the sheet's car, and before them those of the yardstick, nil
// where there is none.
func (p *page) loadRow(l, before *engine.Load) {
	p.open("tr", "")
	p.open("th", "")
	p.name(l.Case)
	p.close("th")
	p.element("td", "unit", l.Side)
	for _, f := range p.loadFigures() {
		text := f.Number(p.n.Style, l)
		if before != nil && f.Quantity != nil {
			text = f.Number(p.n.Style, before) + " → " + text
			if now, was := f.Of(l), f.Of(before); f.Quantity == &number.Moment && now != nil && was != nil && *was != 0 {
				text += " (× " + number.Decimal(math.Abs(float64(*now / *was)), 2) + ")"
			}
		}
		p.element("td", "", text)
	}
	p.close("tr")
}
