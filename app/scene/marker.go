package scene

import (
	"strconv"

	"toewright/internal/plot"
	"toewright/solver"
)

// markerRadius is that of the marker on the curve, in CSS pixels.
const markerRadius = 6

// drawMarker draws the marker of a wheel's travel on its chart, and the line that leads
// from it to the wheel.
func (s *Stage) drawMarker(c *chart) {
	at := c.frame.At(s.numbers.ToeValue(s.toeNow(c.side)), s.numbers.Units.FromMillimetres(s.travel[c.side]))
	s.marker[c.side] = at
	s.out.draw(c.slots.leader, func(p plot.Path) plot.Path { return s.appendLeader(p, c, at) })
	if c.frame.Area.Contains(at) {
		s.out.draw(c.slots.marker, func(p plot.Path) plot.Path { return p.Circle(at, markerRadius) })
	}
}

// inner returns where a chart ends towards its wheel.
func (s *Stage) inner(c *chart) float64 {
	if s.mirrored(c.side) {
		return c.frame.Area.Min.X
	}
	return c.frame.Area.Max.X
}

// appendLeader appends the line from the marker to the edge of the chart and on, through
// the bracket of true travel, to the hub of the wheel.
func (s *Stage) appendLeader(p plot.Path, c *chart, at plot.Point) plot.Path {
	p = p.Polyline(at, plot.Point{X: s.inner(c), Y: at.Y})
	if b, ok := s.bracket(c.side); ok {
		p = p.LineTo(plot.Point{X: b.x, Y: b.at(s.travel[c.side])}).LineTo(s.views[frontView].on(s.rig.wheel[c.side]))
	}
	return p
}

// bracket is the true travel of a wheel, beside it. Where that is small it is enlarged.
type bracket struct {
	x, centre float64
	scale     float64 // CSS pixels by mm
	times     int     // the view's scale
}

// at returns the height of a travel.
func (b bracket) at(travel float64) float64 { return b.centre - travel*b.scale }

const (
	bracketGap   = 9  // from the tyre, in CSS pixels
	leastBracket = 48 // of its height
)

// bracket returns that of a wheel, where the sheet has one.
func (s *Stage) bracket(side solver.Side) (b bracket, ok bool) {
	if s.areas.large != frontView || len(s.cars.Travels) == 0 {
		return b, false
	}
	v := &s.views[frontView]
	home := v.paper(s.rig.place(&s.home, s.rig.wheel[side]))
	b = bracket{x: home.X - v.tyre[side].Width/2*v.p.Scale - bracketGap, centre: home.Y, scale: v.p.Scale, times: 1}
	if s.mirrored(side) {
		b.x = 2*home.X - b.x
	}
	for whole := s.window() * v.p.Scale; whole > 0 && whole*float64(b.times) < leastBracket; {
		b.times++
	}
	b.scale *= float64(b.times)
	return b, true
}

// window returns how much travel the charts show, in mm.
func (s *Stage) window() float64 { return s.cars.Travels[len(s.cars.Travels)-1] - s.cars.Travels[0] }

// drawFan draws the bracket of a wheel's true travel, and the lines that spread it to
// the height of the chart.
func (s *Stage) drawFan(c *chart) {
	b, ok := s.bracket(c.side)
	if !ok {
		return
	}
	inner := s.inner(c)
	low, high := s.cars.Travels[0], s.cars.Travels[len(s.cars.Travels)-1]
	chartAt := func(travel float64) plot.Point {
		return plot.Point{X: inner, Y: c.frame.Y.At(s.numbers.Units.FromMillimetres(travel))}
	}
	s.out.draw(c.slots.fan, func(p plot.Path) plot.Path {
		p = p.Polyline(chartAt(high), plot.Point{X: b.x, Y: b.at(high)}, plot.Point{X: b.x, Y: b.at(low)}, chartAt(low))
		for _, t := range []float64{low, 0, high} {
			p = p.Polyline(plot.Point{X: b.x - 4, Y: b.at(t)}, plot.Point{X: b.x + 4, Y: b.at(t)})
		}
		return p
	})
	if b.times > 1 {
		name := plot.Anchor{At: plot.Point{X: b.x + 4, Y: b.at(high) - 5}, Align: plot.End} // clear of the tyre
		if s.mirrored(c.side) {
			name.At.X, name.Align = b.x-4, plot.Start
		}
		s.out.anchor(c.slots.times, name, "×"+strconv.Itoa(b.times))
	}
}
