package report

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/plot"
	"toewright/solver"
)

// curves draws the toe curves.
func (p *page) curves() {
	p.open("section", "whole")
	p.element("h2", "", "Toe through wheel travel")
	p.open("figure", "")
	p.text = plot.Document{Title: "Toe change of both wheels through their travel", Picture: p.charts()}.AppendInline(p.text)
	p.element("figcaption", "", p.chartWords())
	p.close("figure")
	p.close("section")
}

// tables writes toe in numbers and, where one side speaks for both, beside it what
// else changes.
func (p *page) tables() {
	p.open("section", "pair")
	p.open("div", map[bool]string{false: "whole", true: "whole wide"}[p.n.asLength()])
	p.toeTable()
	p.close("div")
	if p.alike() {
		p.effects()
	}
	p.close("section")
}

func (p *page) chartWords() string {
	text := "Toe change is from each car's own toe at ride height, per wheel; both wheels move together, straight ahead."
	if !p.flat() {
		text += " Broad dashes: the target."
	}
	return text
}

// toeColumn is a column of the table for one side of a row.
type toeColumn struct {
	label, unit string
	text        func(*tableRow) string
}

// tableRow is one side of the cars at one travel.
type tableRow struct {
	p             *page
	before, after *engine.Position // nil where the car does not come there, or there is none
	was, now      float64          // toe at travel 0
}

// dash stands for what there is not.
var dash = number.Decimal(math.NaN(), 0)

// toeColumns returns the columns of the table. Where toe is shown as a length the
// new curve stands in both.
func (p *page) toeColumns() []toeColumn {
	var list []toeColumn
	if p.before() != nil {
		list = append(list, toeColumn{"before", "deg", (*tableRow).beforeText})
	}
	list = append(list, toeColumn{"after", "deg", (*tableRow).afterText})
	if p.before() == nil {
		list[0].label = "toe change"
	} else {
		list = append(list, toeColumn{"by", "deg", (*tableRow).byText})
	}
	if p.n.asLength() {
		list = append(list, toeColumn{"after", p.n.LengthUnit(), (*tableRow).lengthText})
	}
	return append(list, toeColumn{"toe", "deg", (*tableRow).toeText}, toeColumn{"camber", "deg", (*tableRow).camberText})
}

func (r *tableRow) beforeText() string {
	if r.before == nil {
		return dash
	}
	return r.p.n.AngleNumber(r.before.Toe - r.was)
}

func (r *tableRow) afterText() string {
	if r.after == nil {
		return dash
	}
	return r.p.n.AngleNumber(r.after.Toe - r.now)
}

func (r *tableRow) byText() string {
	if r.before == nil || r.after == nil {
		return dash
	}
	by := r.after.Toe - r.now - r.before.Toe + r.was
	return number.Signed(by, r.p.n.AngleNumber(by))
}

func (r *tableRow) lengthText() string {
	if r.after == nil {
		return dash
	}
	return r.p.n.toe(r.after.Toe - r.now)
}

func (r *tableRow) toeText() string {
	if r.after == nil {
		return dash
	}
	return r.p.n.AngleNumber(r.after.Toe)
}

func (r *tableRow) camberText() string {
	if r.after == nil {
		return dash
	}
	return r.p.n.AngleNumber(r.after.Camber)
}

// sides returns the sides that have columns of their own.
func (p *page) sides() []solver.Side {
	if p.alike() {
		return solver.Sides[:1]
	}
	return solver.Sides[:]
}

// sideName names the wheel of a side, or each where one speaks for both.
func (p *page) sideName(side solver.Side) string {
	if p.alike() {
		return "each wheel"
	}
	return side.String() + " wheel"
}

func (p *page) toeTable() {
	columns := p.toeColumns()
	p.open("table", "numbers")
	p.element("caption", "", p.tableWords())
	p.toeHead(columns)
	p.open("tbody", "")
	for i := len(p.Travels) - 1; i >= 0; i-- {
		travel := p.Travels[i]
		p.open("tr", map[bool]string{true: "rest"}[travel == 0])
		p.element("th", "", p.n.travel(travel))
		for _, side := range p.sides() {
			row := p.row(side, travel)
			for k := range columns {
				p.element("td", map[bool]string{true: "first"}[k == 0], columns[k].text(&row))
			}
		}
		p.close("tr")
	}
	p.close("tbody")
	p.close("table")
}

// tableWords says what the columns are.
func (p *page) tableWords() string {
	text := "Before, after: toe change from ride height, toe-in positive; by: their difference. "
	if p.before() == nil {
		text = "Toe change from ride height, toe-in positive. "
	}
	if p.n.asLength() {
		text += "Lengths: over " + p.n.Travel(p.n.Base) + ". "
	}
	return text + "Toe, camber: as the wheel stands."
}

// toeHead writes the headings: a row for the sides above that of the columns.
func (p *page) toeHead(columns []toeColumn) {
	p.open("thead", "")
	p.open("tr", "")
	p.element("th", "", "Travel")
	for _, side := range p.sides() {
		p.text = append(p.text, `<th class="first" colspan="`+string(rune('0'+len(columns)))+`">`...)
		p.write(p.sideName(side))
		p.close("th")
	}
	p.close("tr")
	p.open("tr", "")
	p.element("th", "", p.n.LengthUnit())
	for range p.sides() {
		for k, c := range columns {
			p.open("th", map[bool]string{true: "first"}[k == 0])
			p.write(c.label + " ")
			p.element("small", "", c.unit)
			p.close("th")
		}
	}
	p.close("tr")
	p.close("thead")
}

// row returns one side of the cars at a travel.
func (p *page) row(side solver.Side, travel float64) tableRow {
	r := tableRow{p: p}
	now := &p.after().Rows[side]
	r.after, r.now = positionAt(now, travel), toeAtRest(now)
	if b := p.before(); b != nil {
		was := &b.Rows[side]
		r.before, r.was = positionAt(was, travel), toeAtRest(was)
	}
	return r
}

// positionAt returns the position at a travel, nil where the wheel does not come
// there.
func positionAt(s *engine.CarSweep, travel float64) *engine.Position {
	for i := range s.Positions {
		if s.Positions[i].Travel == travel {
			return &s.Positions[i]
		}
	}
	return nil
}
