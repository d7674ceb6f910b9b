package report

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// changes writes what the candidate changes, what that comes to, and of which parts
// it is made up.
func (p *page) changes() {
	p.open("section", "pair")
	if k := p.record(); k != nil && len(k.Changes) > 0 {
		p.open("div", "")
		p.element("h2", "", "What is changed")
		p.changesTable(k)
		p.close("div")
	}
	p.open("div", "")
	p.result()
	p.partsList()
	p.close("div")
	p.close("section")
}

// result writes in figures what the change comes to, for each side or for both.
func (p *page) result() {
	p.element("h2", "", "Largest toe change"+p.fromTarget())
	for _, side := range p.sides() {
		p.open("p", "result")
		p.write(p.sideName(side) + ": ")
		if b := p.before(); b != nil {
			p.write(p.toeText(float64(b.Figures[side].Peak)) + " → ")
		}
		p.element("strong", "", p.toeText(float64(p.after().Figures[side].Peak)))
		p.close("p")
	}
	p.element("p", "small", "Within "+p.windowWords()+", from ride height.")
}

func (p *page) fromTarget() string {
	if p.flat() {
		return ""
	}
	return " less its target"
}

// flat reports whether no toe change is what is wanted.
func (p *page) flat() bool {
	return p.Study.Search == nil || len(p.Study.Search.Target)+len(p.Study.Search.TargetRight) == 0
}

// toeText writes a toe with its unit, and in degrees as well where it is a length.
func (p *page) toeText(deg float64) string {
	if !p.n.asLength() {
		return p.n.toe(deg) + "°"
	}
	return p.n.toe(deg) + " " + p.n.LengthUnit() + " (" + p.n.AngleNumber(deg) + "°)"
}

func (p *page) windowWords() string {
	unit := " " + p.n.LengthUnit()
	return p.n.travel(p.Window.Droop) + unit + " droop to " + p.n.travel(p.Window.Bump) + unit + " bump"
}

func (p *page) changesTable(k *study.Candidate) {
	p.open("table", "plain")
	for _, key := range slices.Sorted(maps.Keys(k.Changes)) {
		p.open("tr", "")
		p.element("th", "", p.changeLabel(key))
		p.element("td", "", p.changeValue(key, k.Changes[key]))
		p.close("tr")
	}
	p.close("table")
	p.element("p", "small", "Set again afterwards: "+held(k.Hold)+".")
}

// changeLabel names a parameter as people do, with its side.
func (p *page) changeLabel(key string) string {
	name, side, sided := strings.Cut(key, "@")
	text := name
	if q, ok := p.parameter(key); ok {
		text = q.Label
	}
	if sided {
		text += ", " + side
	}
	return text
}

func (p *page) parameter(key string) (solver.Parameter, bool) {
	design, err := p.Study.Design()
	if err != nil {
		return solver.Parameter{}, false
	}
	q, _, err := solver.FindParameter(design, key)
	return q, err == nil
}

func (p *page) changeValue(key string, v float64) string {
	q, _ := p.parameter(key)
	switch {
	case q.Quantity == solver.AngleQuantity:
		return p.n.AngleNumber(v) + "°"
	case q.Absolute:
		return p.n.full(v)
	}
	return number.Signed(v, p.n.full(v))
}

// held lists the setpoints that an alignment sets again.
func held(list []string) string {
	switch {
	case list == nil:
		return "toe, camber, caster"
	case len(list) == 0:
		return "nothing; the arms keep their lengths"
	}
	return strings.Join(list, ", ")
}

// partsList writes the parts of the catalogue that make up the candidate.
func (p *page) partsList() {
	if len(p.Parts) == 0 {
		return
	}
	p.element("h2", "next", "Parts to buy")
	p.open("table", "plain")
	sum := 0.0
	for _, part := range p.Parts {
		sum += part.Price
		p.open("tr", "")
		p.open("th", "")
		p.name(part.Slot + ": " + part.Name)
		p.close("th")
		p.element("td", "", number.Decimal(part.Price, 2))
		p.close("tr")
	}
	p.close("table")
	p.element("p", "small", fmt.Sprintf("Together %s, in the catalogue's currency. Of all that make up this candidate, the cheapest.", number.Decimal(sum, 2)))
}
