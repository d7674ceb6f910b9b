package scene

import (
	"math"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// leastToe is the least toe, in degrees, that a chart spans to either side, so that
// a flat curve is drawn flat and not as its noise.
const leastToe = 0.1

// leastZoomed is the same where the reader looks closer: no gauge shows less.
const leastZoomed = 0.02

// curve is a toe curve in the units shown, and where it was drawn last.
type curve struct {
	plot.Curve
	of    source
	frame plot.Frame
	mark  float64 // of its marks, the size that they were drawn in
}

// source is what a curve was filled from: two alike are the same curve.
type source struct {
	car     engine.Solution
	numbers model.Numbers
}

// fill sets the curve to a car's own toe change by travel, unless it is that already.
func (c *curve) fill(n model.Numbers, car *model.Car, side solver.Side) {
	of := source{car.Solution(), n}
	if of == c.of {
		return
	}
	c.take(n, &car.Curves[side], 1)
	c.of = of
}

// take sets the curve to the toe change by travel of a sweep; rate is the travel of this
// wheel by that of the sweep.
func (c *curve) take(n model.Numbers, from *solver.Curve, rate float64) {
	c.empty()
	rest := from.Rest()
	for i := range from.Positions {
		p := &from.Positions[i]
		c.X = append(c.X, n.ToeValue(p.Toe-rest.Toe))
		c.Y = append(c.Y, n.Units.FromMillimetres(p.Travel*rate))
	}
}

// empty makes the curve have nothing, not even where it was drawn.
func (c *curve) empty() {
	c.X, c.Y, c.of, c.frame = c.X[:0], c.Y[:0], source{}, plot.Frame{}
}

// chart is one wheel's chart as it is drawn.
type chart struct {
	side   solver.Side
	slots  *chartSlots
	frame  plot.Frame
	curves [plot.MaxSeries]curve
}

// frames sets the frames of both charts, which have one toe scale and one travel
// scale.
func (s *Stage) frames(a *areas) {
	travel := s.travelDomain()
	toe := s.toeDomain()
	for _, side := range solver.Sides {
		f := plot.NewFrame(a.chart[side], toe, travel)
		if s.mirrored(side) {
			f = f.Mirrored()
		}
		s.charts[side].frame = f
	}
}

// travelDomain is the window of travel in the units shown.
func (s *Stage) travelDomain() plot.Domain {
	t := s.cars.Travels
	if len(t) == 0 {
		return plot.Domain{Low: -1, High: 1}
	}
	d := plot.Domain{Low: s.numbers.Units.FromMillimetres(t[0]), High: s.numbers.Units.FromMillimetres(t[len(t)-1])}
	return d.Widen(1e-3)
}

// toeDomain is symmetric about no change and holds every curve shown, or that of the
// selected car alone. While something is held it does not shrink, so that the paper
// keeps still under a drag.
func (s *Stage) toeDomain() plot.Domain {
	d, span := plot.Domain{}, leastToe
	selected := s.desk.Selected()
	zoomed := s.desk.View.Zoomed && selected != nil && selected.Err == nil
	if zoomed {
		span = leastZoomed
	}
	for i := range s.charts {
		for k := range s.charts[i].curves {
			if zoomed && k != selected.Index {
				continue
			}
			if c, ok := plot.DomainOf(s.charts[i].curves[k].X); ok {
				d.Low, d.High = min(d.Low, c.Low), max(d.High, c.High)
			}
		}
	}
	least := s.numbers.ToeValue(solver.Deg(span))
	d = d.Symmetric().Widen(2 * least).Nice(maxToeTicks)
	if s.Holding && s.toe.High > d.High && s.toeUnit == s.numbers.ToeUnit() {
		d = s.toe
	}
	s.toe, s.toeUnit = d, s.numbers.ToeUnit()
	return d
}

// markerSize is the size of the marks of the reference's curve, in CSS pixels, and
// boldMarker of those of the selected car's.
const (
	markerSize = 3.2
	boldMarker = 4.4
)

// drawChart fills the slots of one chart.
func (s *Stage) drawChart(c *chart) {
	s.drawAxes(c)
	for i := range c.curves {
		s.drawCurve(c, i)
	}
	s.drawTarget(c)
	s.drawBands(c)
	s.drawOther(c)
	s.drawSetUps(c)
	s.drawTried(c)
	s.drawReadings(c)
	s.drawMarker(c)
}

// markOf returns the size of the marks on the curve of car i: only that of the selected
// car and that of the reference have any.
func (s *Stage) markOf(i int) float64 {
	switch i {
	case s.car.Index:
		return boldMarker
	case s.reference():
		return markerSize
	}
	return 0
}

// drawCurve draws the curve of car i and its marks. Of a curve that has been drawn so in
// this frame already the slots are left as they are.
func (s *Stage) drawCurve(c *chart, i int) {
	k := &c.curves[i]
	mark := s.markOf(i)
	if k.frame == c.frame && k.mark == mark {
		return
	}
	k.frame, k.mark = c.frame, mark
	s.out.empty(c.slots.curves[i])
	s.out.empty(c.slots.marks[i])
	s.out.draw(c.slots.curves[i], func(p plot.Path) plot.Path { return c.frame.AppendMonotone(p, plot.Vertical, k.X, k.Y) })
	if mark > 0 {
		s.out.draw(c.slots.marks[i], func(p plot.Path) plot.Path { return s.appendMarks(p, c, i) })
	}
}

// appendMarks appends the marks of curve i at each inch of travel, or each 25 mm.
func (s *Stage) appendMarks(p plot.Path, c *chart, i int) plot.Path {
	k, every := &c.curves[i], 25.0
	if s.numbers.Units == study.Inch {
		every = 1
	}
	for n := math.Ceil(c.frame.Y.Low / every); n*every <= c.frame.Y.High; n++ {
		if toe, ok := plot.Interpolate(k.Y, k.X, n*every); ok {
			if at := c.frame.At(toe, n*every); c.frame.Area.Contains(at) {
				p = p.Marker(plot.SeriesStyle(i).Marker, at, k.mark)
			}
		}
	}
	return p
}

// drawOther draws the selected car's curve of the side that has no chart of its own.
func (s *Stage) drawOther(c *chart) {
	other := solver.Right - c.side
	if s.form.half || s.charted(other) {
		return
	}
	k := &s.charts[other].curves[s.car.Index]
	s.out.draw(c.slots.other, func(p plot.Path) plot.Path { return c.frame.AppendMonotone(p, plot.Vertical, k.X, k.Y) })
}

// drawTried draws the curve of the best so far of a search, with its name at the upper end.
func (s *Stage) drawTried(c *chart) {
	car := s.desk.View.Best
	if car == nil || car.Err != nil {
		return
	}
	var k curve
	k.take(s.numbers, &car.Curves[c.side], 1)
	s.out.draw(c.slots.tried, func(p plot.Path) plot.Path { return c.frame.AppendMonotone(p, plot.Vertical, k.X, k.Y) })
	const name = "best so far"
	a, half := c.frame.Area, plot.TextWidth(name, tickSize)/2+2
	at := c.frame.At(k.X[len(k.X)-1], k.Y[len(k.Y)-1])
	at.X = math.Max(a.Min.X+half, math.Min(a.Max.X-half, at.X))
	at.Y = math.Max(at.Y, a.Min.Y) + tickSize
	s.out.write(c.slots.triedName, at, name)
}

// drawTarget draws the wanted toe change, where the study has one, and shades what lies
// within its tolerance.
func (s *Stage) drawTarget(c *chart) {
	target := s.target(c.side)
	s.out.draw(c.slots.target, func(p plot.Path) plot.Path { return c.frame.AppendLine(p, target.X, target.Y) })
	s.out.draw(c.slots.within, func(p plot.Path) plot.Path {
		n := len(target.X)
		low, high := make([]float64, n), make([]float64, n)
		by := s.numbers.ToeValue(s.tolerance())
		for i, x := range target.X {
			low[i], high[i] = x-by, x+by
		}
		return c.frame.AppendBand(p, plot.Vertical, target.Y, low, high)
	})
}

// tolerance returns how far from the target a curve may be.
func (s *Stage) tolerance() solver.Angle { return s.desk.Session.GoodWithin() }

// target returns the wanted toe change of a side in the units shown, over the whole
// window: constant beyond its ends. A study without one wants none.
func (s *Stage) target(side solver.Side) plot.Curve {
	doc := s.desk.Session.Document()
	var out plot.Curve
	travel := s.charts[side].frame.Y.Domain
	if doc.Search == nil {
		return out
	}
	points := s.desk.Session.Cars().TargetPoints(side)
	if len(points) == 0 {
		return plot.Curve{X: []float64{0, 0}, Y: []float64{travel.Low, travel.High}}
	}
	wanted := s.desk.Session.Cars().Target(side)
	add := func(at float64) {
		toe := wanted.At(s.numbers.Units.Millimetres(at))
		out.X, out.Y = append(out.X, s.numbers.ToeValue(toe)), append(out.Y, at)
	}
	add(travel.Low)
	for _, p := range points {
		if at := doc.Units.Convert(p[0], s.numbers.Units); travel.Low < at && at < travel.High {
			add(at)
		}
	}
	add(travel.High)
	return out
}

// drawBands draws the bands of the view about the curves.
func (s *Stage) drawBands(c *chart) {
	used := 0
	for _, b := range s.desk.View.Bands {
		if b.Side != c.side || used == maxBands {
			continue
		}
		n := len(b.Travel)
		at, low, high := make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range b.Travel {
			at[i] = s.numbers.Units.FromMillimetres(b.Travel[i])
			low[i], high[i] = s.numbers.ToeValue(solver.Angle(b.Low[i])), s.numbers.ToeValue(solver.Angle(b.High[i]))
		}
		s.out.draw(c.slots.bands[used], func(p plot.Path) plot.Path {
			return c.frame.AppendBand(p, plot.Vertical, at, low, high)
		})
		used++
	}
}
