package report

import (
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/optimize"
	"toewright/solver"
)

// Sizes of the charts, in CSS pixels.
const (
	chartWidth  = 700.0
	chartHeight = 244.0
	denseHeight = 196.0 // where both sides need room for numbers
	cardHeight  = 160.0
	chartGap    = 16.0
	textSize    = 11.0
)

// leastToe is the least toe change, in degrees, that a chart spans to either side, so
// that a flat curve is drawn flat.
const leastToe = 0.1

// maxToeTicks bounds the ticks of a chart's toe axis.
const maxToeTicks = 8

// charts draws the toe curves of both wheels side by side, travel upward as the wheel
// moves; toe-in points to the middle of the car on either side.
func (p *page) charts() plot.Picture {
	picture := plot.Picture{Width: chartWidth, Height: chartHeight}
	switch {
	case p.Card != nil:
		picture.Height = cardHeight
	case !p.alike(), p.Loads != nil:
		picture.Height = denseHeight
	}
	width := (chartWidth - chartGap) / 2
	toe := p.toeDomain()
	for _, side := range solver.Sides {
		c := p.chart(side, toe)
		c.Area = plot.Box(float64(side)*(width+chartGap), 0, width, picture.Height)
		picture.Chart(c)
	}
	return picture
}

func (p *page) chart(side solver.Side, toe plot.Domain) plot.Chart {
	c := plot.Chart{
		X:     plot.ChartAxis{Domain: toe, Label: side.String() + " wheel: toe change, " + p.n.ToeMark() + "; toe-in to the " + inward[side]},
		Y:     plot.ChartAxis{Domain: p.travelDomain(), Label: "travel, " + p.n.LengthUnit() + ", bump up"},
		Along: plot.Vertical, Mirrored: side == solver.Right, Size: textSize,
		Target: p.target(side),
	}
	for i := range p.Cars {
		curve := p.curve(&p.Cars[i].Curves[side])
		style := 0
		if i > 0 || !isBase(p.Cars[i].Name) {
			style = 1
		}
		c.Series = append(c.Series, plot.ChartSeries{
			Name: shorten(clean(p.carName(p.Cars[i].Name)), longestLegend), Style: style,
			Curve: curve, Markers: max(len(curve.Y)/markers, 1),
		})
	}
	return c
}

// inward says by side where on the paper the middle of the car is.
var inward = [2]string{"right", "left"}

// longestLegend is the most of a car's name, in characters, that a legend has room for.
const longestLegend = 24

// markers is about how many stand on a curve.
const markers = 8

// curve returns the toe change of a side by travel, in the units shown.
func (p *page) curve(s *engine.CarSweep) plot.Curve {
	var c plot.Curve
	rest := toeAtRest(s)
	for i := range s.Positions {
		at := &s.Positions[i]
		c.X = append(c.X, p.n.ToeShown(at.Toe-rest))
		c.Y = append(c.Y, p.shown(at.Travel))
	}
	return c
}

// toeAtRest returns the toe at travel 0, from which change is counted; a sweep always
// has it.
func toeAtRest(s *engine.CarSweep) float64 {
	for i := range s.Positions {
		if s.Positions[i].Travel == 0 {
			return s.Positions[i].Toe
		}
	}
	return 0
}

// shown returns a length of the study in the units shown.
func (p *page) shown(x float64) float64 { return p.n.file.Convert(x, p.n.Units) }

// toeDomain is symmetric about no change and holds every curve.
func (p *page) toeDomain() plot.Domain {
	var lists [][]float64
	for i := range p.Cars {
		for side := range p.Cars[i].Curves {
			lists = append(lists, p.curve(&p.Cars[i].Curves[side]).X)
		}
	}
	d, _ := plot.DomainOf(lists...)
	return d.Symmetric().Widen(2 * p.n.ToeShown(leastToe)).Nice(maxToeTicks)
}

func (p *page) travelDomain() plot.Domain {
	w := p.Study.Window()
	return plot.Domain{Low: -p.shown(w.Droop), High: p.shown(w.Bump)}
}

// target returns the wanted toe change of a side through the window that figures are
// judged over; nothing where it is flat.
func (p *page) target(side solver.Side) plot.Curve {
	var c plot.Curve
	t := p.targetOf(side)
	if len(t.Travel) == 0 {
		return c
	}
	mm := p.n.file.Millimetres
	for _, travel := range within(t.Travel, -mm(p.Window.Droop), mm(p.Window.Bump)) {
		c.X = append(c.X, p.n.ToeShown(t.At(travel).Degrees()))
		c.Y = append(c.Y, p.n.Units.FromMillimetres(travel))
	}
	return c
}

// targetOf returns the wanted toe change of a side by travel in mm.
func (p *page) targetOf(side solver.Side) optimize.Target {
	var t optimize.Target
	if p.Target == nil {
		return t
	}
	points := p.Target.Left
	if side == solver.Right {
		points = p.Target.Right
	}
	for _, q := range points {
		t.Travel = append(t.Travel, p.Study.Units.Millimetres(q[0]))
		t.Change = append(t.Change, solver.Deg(q[1]))
	}
	return t
}

// within returns both ends of a range and those of the values that lie in it.
func within(values []float64, low, high float64) []float64 {
	list := []float64{low}
	for _, v := range values {
		if v > low && v < high {
			list = append(list, v)
		}
	}
	return append(list, high)
}
