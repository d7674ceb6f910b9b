package scene

import (
	"fmt"

	"toewright/internal/number"
	"toewright/internal/plot"
	"toewright/solver"
)

// markerRadius is that of the marker on the curve, in CSS pixels.
const markerRadius = 5

// drawMarker draws the marker of a wheel's travel on its chart, the line that leads
// to it from the wheel, and the read-out.
func (s *Stage) drawMarker(c *chart) {
	toe, travel := s.toeNow(c.side), s.numbers.Units.FromMillimetres(s.travel[c.side])
	at := c.frame.At(s.numbers.ToeValue(toe), travel)
	s.marker[c.side] = at
	s.out.draw(c.slots.leader, func(p plot.Path) plot.Path { return s.appendLeader(p, c, at) })
	if c.frame.Area.Contains(at) {
		s.out.draw(c.slots.marker, func(p plot.Path) plot.Path { return p.Circle(at, markerRadius) })
	}
	middle, y := c.frame.Area.Centre().X, c.frame.Area.Min.Y
	s.out.write(c.slots.readout[0], plot.Point{X: middle, Y: y - above + 30}, fmt.Sprintf("%s%s at %s",
		number.Signed(toe.Radians(), s.numbers.ToeNumber(toe)), toeMark(s.numbers.ToeUnit()), number.Signed(s.travel[c.side], s.numbers.Travel(s.travel[c.side]))))
}

// writeFigures writes the figures of the selected car's curve under the read-out: they
// follow a drag within the frame.
func (s *Stage) writeFigures(c *chart) {
	f := &s.car.Figures[c.side]
	mark := toeMark(s.numbers.ToeUnit())
	s.out.write(c.slots.readout[1], plot.Point{X: c.frame.Area.Centre().X, Y: c.frame.Area.Min.Y - 6}, fmt.Sprintf("RMS %s%s, peak %s%s",
		s.numbers.ToeNumber(f.RMS), mark, s.numbers.ToeNumber(f.Peak), mark))
}

// toeMark is a short unit behind a read-out; where toe is a length the axis says
// over which base.
func toeMark(unit string) string {
	if unit == "deg" {
		return "°"
	}
	return ""
}

// appendLeader appends the line from the wheel centre, out through the ladder at its
// true height, to the chart at the height of its travel, and across to the curve.
func (s *Stage) appendLeader(p plot.Path, c *chart, at plot.Point) plot.Path {
	f := c.frame.Area
	inner, outer := f.Max.X, f.Min.X
	if c.side == solver.Right {
		inner, outer = outer, inner
	}
	if s.areas.fans && s.shown(frontView) {
		hub := s.views[frontView].on(s.rig.wheel[c.side])
		p = p.Polyline(hub, plot.Point{X: s.ladder(c.side), Y: hub.Y}, plot.Point{X: inner, Y: at.Y})
	} else {
		p = p.MoveTo(plot.Point{X: inner, Y: at.Y})
	}
	return p.LineTo(plot.Point{X: outer, Y: at.Y})
}

// ladderGap is the distance of the ladder from the tyre, in CSS pixels.
const ladderGap = 7

// ladder returns where the ladder of true travel stands beside a tyre.
func (s *Stage) ladder(side solver.Side) float64 {
	v := s.views[frontView]
	home := v.p.At(s.rig.place(&s.home, s.rig.wheel[side]))
	reach := v.tyre[side].Width/2*v.p.Scale + ladderGap
	if side == solver.Left {
		return home.X - reach
	}
	return home.X + reach
}

// drawFan draws the ladder of a wheel's true travel, and the lines that spread it to
// the height of the chart.
func (s *Stage) drawFan(c *chart) {
	if !s.areas.fans || !s.shown(frontView) || len(s.cars.Travels) == 0 {
		return
	}
	f := c.frame.Area
	inner := f.Max.X
	if c.side == solver.Right {
		inner = f.Min.X
	}
	x, v := s.ladder(c.side), s.views[frontView]
	centre := v.p.At(s.rig.place(&s.home, s.rig.wheel[c.side])).Y
	low, high := s.cars.Travels[0], s.cars.Travels[len(s.cars.Travels)-1]
	height := func(travel float64) float64 { return centre - travel*v.p.Scale }
	s.out.draw(c.slots.fan, func(p plot.Path) plot.Path {
		p = p.Polyline(plot.Point{X: inner, Y: f.Min.Y}, plot.Point{X: x, Y: height(high)},
			plot.Point{X: x, Y: height(low)}, plot.Point{X: inner, Y: f.Max.Y})
		for _, t := range []float64{low, 0, high} {
			p = p.Polyline(plot.Point{X: x - 3, Y: height(t)}, plot.Point{X: x + 3, Y: height(t)})
		}
		return p
	})
}
