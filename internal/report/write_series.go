package report

import (
	"fmt"

	"toewright/internal/number"
	"toewright/solver"
)

// seriesHead says of what part the record is, and what the cars come to.
func (p *page) seriesHead() {
	s := p.Series
	limit := "none stated"
	if s.Limit.Valid() {
		limit = p.toeText(float64(s.Limit))
	}
	p.head("Series record", [][2]string{
		{"Revision", p.Study.Revision}, {"Date", p.Date}, {"Limit, " + s.Figure, limit}, {"As drawn", p.toeText(float64(s.Predicted))},
		{"Window", p.windowWords()}, {"Program", "toewright " + p.Version}, {"Measured by", ""}, {"Checked by", ""},
	})
	var lines []string
	for _, words := range s.Words {
		lines = append(lines, words+".")
	}
	p.points("What the cars come to", lines)
}

// seriesCars lists the cars measured.
func (p *page) seriesCars() {
	p.rows("Cars measured", "Each fitted to its own readings; "+p.Series.Figure+" of toe change less target of the worse wheel, "+p.n.ToeUnit()+", with the band that holds 90 %. Near: the limit lies in that band.",
		[]string{"car", "date", "readings", p.Series.Figure, "from", "to", "furthest off the drawing", "verdict"}, len(p.Series.Cars), func(i int) []string {
			c := &p.Series.Cars[i]
			off, said := dash, c.Said()
			if c.Off != nil {
				off = fmt.Sprintf("%s, %s at %s", p.n.toe(c.Off.Change), c.Off.Side, p.n.travel(c.Off.Travel))
			}
			if c.Problem != "" {
				said += ": " + c.Problem
			}
			return []string{c.Car, c.Date, fmt.Sprint(c.Readings), p.n.toe(float64(c.Figure.Value)), p.n.toe(float64(c.Figure.Low)), p.n.toe(float64(c.Figure.High)), off, said}
		})
}

// mostCommon is how many dimensions have room.
const mostCommon = 6

// seriesCommon lists what all cars are off alike.
func (p *page) seriesCommon() {
	list := p.Series.InCommon(mostCommon)
	if len(list) == 0 {
		return
	}
	p.rows("What all cars have in common", "From one fit over all cars, each with its own zeros. Alone: were no other dimension off on all of them; together: all free at once, with one standard deviation.",
		[]string{"dimension", "unit", "alone", "explains", "together", "sd"}, len(list), func(i int) []string {
			c := &list[i]
			unit, write := p.unitOf(c.Parameter)
			return []string{p.changeLabel(c.Parameter), unit, write(c.Alone), number.Percent(100*c.Share) + " %", write(c.Value), write(c.SD)}
		})
}

// unitOf returns the unit of a parameter, and what writes its values without it.
func (p *page) unitOf(key string) (string, func(float64) string) {
	if q, _ := p.parameter(key); q.Quantity == solver.AngleQuantity {
		return "deg", p.n.AngleNumber
	}
	return p.n.LengthUnit(), p.n.length
}

// rows writes a table with what is said of it; what a user wrote stands in it as text.
func (p *page) rows(heading, about string, heads []string, n int, row func(i int) []string) {
	p.open("section", "")
	p.element("h2", "", heading)
	p.element("p", "", about)
	p.open("table", "numbers")
	p.open("thead", "")
	p.headings(heads...)
	p.close("thead")
	p.open("tbody", "")
	for i := range n {
		p.open("tr", "")
		for k, text := range row(i) {
			tag := "td"
			if k == 0 {
				tag = "th"
			}
			p.open(tag, "")
			p.name(text)
			p.close(tag)
		}
		p.close("tr")
	}
	p.close("tbody")
	p.close("table")
	p.close("section")
}
