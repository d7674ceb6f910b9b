package scene

import (
	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/plot"
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
// scale. Toe-in points to the middle of the car on either side.
func (s *Stage) frames(a *areas) {
	travel := s.travelDomain()
	toe := s.toeDomain()
	for _, side := range solver.Sides {
		f := plot.NewFrame(a.chart[side], toe, travel)
		if side == solver.Right {
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

// markEvery is the number of markers along a curve.
const markEvery = 6

// markerSize is the size of a curve's marks, in CSS pixels.
const markerSize = 2.6

// drawChart fills the slots of one chart.
func (s *Stage) drawChart(c *chart) {
	s.drawAxes(c)
	for i := range c.curves {
		s.drawCurve(c, i)
	}
	s.drawTarget(c)
	s.drawBands(c)
	s.drawSetUps(c)
	s.drawReadings(c)
	s.drawMarker(c)
	s.writeFigures(c)
}

// drawCurve draws the curve of car i and its marks, which begin at different places
// for different cars, so that they do not hide one another. Of a curve that has been
// drawn in this frame already the slots are left as they are.
func (s *Stage) drawCurve(c *chart, i int) {
	k := &c.curves[i]
	if k.frame == c.frame {
		return
	}
	k.frame = c.frame
	s.out.empty(c.slots.curves[i])
	s.out.empty(c.slots.marks[i])
	s.out.draw(c.slots.curves[i], func(p plot.Path) plot.Path { return c.frame.AppendMonotone(p, plot.Vertical, k.X, k.Y) })
	if len(k.X) == 0 {
		return
	}
	every := max(len(k.X)/markEvery, 1)
	from := (i * every / plot.MaxSeries) % every
	s.out.draw(c.slots.marks[i], func(p plot.Path) plot.Path {
		return c.frame.AppendMarkers(p, plot.SeriesStyle(i).Marker, markerSize, k.X[from:], k.Y[from:], every)
	})
}

// drawTarget draws the wanted toe change, where the study has one.
func (s *Stage) drawTarget(c *chart) {
	target := s.target(c.side)
	s.out.draw(c.slots.target, func(p plot.Path) plot.Path { return c.frame.AppendLine(p, target.X, target.Y) })
}

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
