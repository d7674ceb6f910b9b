package report

import (
	"fmt"
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/solver"
)

// cardHead says what part the card goes with.
func (p *page) cardHead() {
	left, right := "", ""
	if a := p.Study.Arm; a != nil {
		left, right = a.NumberLeft, a.NumberRight
	}
	p.head("Fitting card", [][2]string{
		{"Part number, left", left}, {"Part number, right", right}, {"Revision", p.Study.Revision}, {"Date", p.Date},
		{"Program", "toewright " + p.Version}, {"Fitted by, date", ""},
	})
}

// cardFits lists the set-ups that the part serves, with room for the car's own.
func (p *page) cardFits() {
	c := p.Card.Covers
	if c == nil {
		return
	}
	p.rows("Does it fit your car?", fmt.Sprintf("Each line by itself, all else as in the study: between From and To the %s of toe change of the worse wheel stays within %s over %s. Outside it does not; this card says nothing of two lines off at once.",
		c.Figure, p.toeText(c.Limit), p.windowWords()),
		[]string{"Set-up", "", "as drawn", "from", "to", "ends by", "your car", "within"}, len(c.Covers), func(i int) []string { return p.cardFit(&c.Covers[i]) })
}

func (p *page) cardFit(c *engine.Cover) []string {
	unit, write := p.unitOf(c.Parameter)
	q, _ := p.parameter(c.Parameter)
	ends := c.Problem
	if ends == "" {
		ends = c.LowEnd + "; " + c.HighEnd
	}
	label := q.Label
	if !q.Absolute {
		label += ", change"
	}
	return []string{label, unit, write(float64(c.Own)), write(float64(c.Low)), write(float64(c.High)), ends, "________", "yes / no"}
}

// cardSets says what is set again once the part is on, and by how many turns.
func (p *page) cardSets() {
	p.open("section", "")
	p.element("h2", "", "Set again after fitting")
	p.open("table", "numbers")
	p.open("thead", "")
	p.headings("", "unit", "left", "right")
	p.close("thead")
	p.open("tbody", "")
	f := &p.after().Figures
	row := func(label, unit string, of func(side int) string) {
		p.open("tr", "")
		p.element("th", "", label)
		for _, text := range []string{unit, of(0), of(1)} {
			p.element("td", "", text)
		}
		p.close("tr")
	}
	row("static toe, each wheel", "deg", func(s int) string { return p.n.figure(angleKind, f[s].StaticToe) })
	row("static toe over "+p.gaugeBase(), p.n.LengthUnit(), func(s int) string { return p.Card.Gauge.Toe(float64(f[s].StaticToe)) })
	row("static camber", "deg", func(s int) string { return p.n.figure(angleKind, f[s].StaticCamber) })
	row("static caster", "deg", func(s int) string { return p.n.figure(angleKind, f[s].StaticCaster) })
	sides := p.Arm.Sides
	row("tie rod, ball to ball, before", p.n.LengthUnit(), func(s int) string { return p.n.length(sides[s].TieRod.Before) })
	row("tie rod, ball to ball, after", p.n.LengthUnit(), func(s int) string { return p.n.length(sides[s].TieRod.After) })
	if sides[0].Turns.Valid() {
		row("turns of the adjuster", "", func(s int) string { return turns(p, &sides[s]) })
	}
	if sides[0].Thread.Valid() {
		row("thread then engaged", p.n.LengthUnit(), func(s int) string { return thread(p, &sides[s]) })
	}
	p.close("tbody")
	p.close("table")
	hold := held(nil)
	if k := p.record(); k != nil {
		hold = held(k.Hold)
	}
	p.element("p", "small", "Figures hold with these set again: "+hold+". What is not named comes out as it will.")
	p.close("section")
}

func (p *page) gaugeBase() string { return p.Card.Gauge.Travel(p.Card.Gauge.Base) }

// cardReadings lists what a gauge reads at each travel before and after, with the band of the
// series, and room for what it reads.
func (p *page) cardReadings() {
	g := p.Card.Gauge
	p.open("section", "whole")
	p.element("h2", "", "Check with a gauge")
	text := "Zero the gauge at ride height, steering locked straight ahead, and move the wheel to each travel. Readings over " + p.gaugeBase() + " (" + map[number.Gauge]string{number.Indicators: "two indicators fixed to the ground", number.Plate: "a plate on the hub"}[g.Gauge] + "), " + p.n.LengthUnit() + ", toe-in positive, each wheel."
	if b := p.Card.Band; b != nil {
		text += fmt.Sprintf(" Between low and high lie 95 of 100 of %s made by chance within the study's tolerances; the gauge's own error comes on top.", number.Count(b.Cars, "car"))
	}
	p.element("p", "", text)
	p.open("table", "numbers readings")
	p.open("thead", "")
	heads := []string{"travel, " + p.n.LengthUnit()}
	for _, side := range solver.Sides {
		for _, h := range p.readingHeads() {
			heads = append(heads, side.String()+" "+h)
		}
	}
	p.headings(heads...)
	p.close("thead")
	p.open("tbody", "")
	for i := len(p.Travels) - 1; i >= 0; i-- {
		p.open("tr", "")
		p.element("th", "", p.n.travel(p.Travels[i]))
		for side := range solver.Sides {
			for _, text := range p.readingCells(side, p.Travels[i]) {
				p.element("td", "", text)
			}
		}
		p.close("tr")
	}
	p.close("tbody")
	p.close("table")
	p.close("section")
}

func (p *page) readingHeads() (heads []string) {
	if p.before() != nil {
		heads = append(heads, "before")
	}
	heads = append(heads, "after")
	if p.Card.Band != nil {
		heads = append(heads, "low", "high")
	}
	return append(heads, "read")
}

// readingCells are what a side's gauge reads at a travel.
func (p *page) readingCells(side int, travel float64) (cells []string) {
	for i := range p.Cars {
		cells = append(cells, p.reading(&p.Cars[i].Rows[side], travel, math.NaN()))
	}
	if b := p.Card.Band; b != nil {
		low, high := math.NaN(), math.NaN()
		for _, at := range b.Positions {
			if at.Side == solver.Sides[side].String() && math.Abs(at.Travel-travel) < sameTravel {
				low, high = float64(at.Low), float64(at.High)
			}
		}
		rows := &p.after().Rows[side]
		cells = append(cells, p.reading(rows, travel, low), p.reading(rows, travel, high))
		if math.IsNaN(low) {
			cells[len(cells)-2], cells[len(cells)-1] = dash, dash
		}
	}
	return append(cells, "____")
}

// sameTravel is the difference below which two travels are one, in the file's units.
const sameTravel = 1e-6

// reading writes what the gauge reads of a side at a travel, zeroed at ride height; with a
// toe change given, of a car that has that instead.
func (p *page) reading(s *engine.CarSweep, travel, change float64) string {
	toe, rest := math.NaN(), math.NaN()
	for i := range s.Positions {
		at := &s.Positions[i]
		if math.Abs(at.Travel-travel) < sameTravel {
			toe = at.Toe
		}
		if at.Travel == 0 {
			rest = at.Toe
		}
	}
	if !math.IsNaN(change) {
		toe = rest + change
	}
	return p.Card.Gauge.ReadingText(toe, rest)
}

// cardTerms ends the card.
func (p *page) cardTerms() {
	p.open("section", "")
	p.points("Not worked out", p.Omitted)
	p.open("div", "cautions")
	for _, c := range engine.Cautions {
		p.write(c + " ")
	}
	p.close("div")
	p.close("section")
}
