package scene

import (
	"math"

	"toewright/internal/number"
	"toewright/internal/plot"
	"toewright/solver"
)

// figureSize is the text size of dimensions, in CSS pixels.
const figureSize = 12

// smallest is the change of a part, in mm, below which it has no dimension.
const smallest = 1e-6

// changeOf returns what the selected car changes by a parameter beside the reference, in mm.
func (s *Stage) changeOf(key string) float64 {
	of := s.cars.At(s.reference())
	return s.desk.Session.Document().Units.Millimetres(s.car.Changes[key] - of.Changes[key])
}

// drawFrontChange dimensions the height of the arm's ball in the elevation, from its
// place in the reference.
func (s *Stage) drawFrontChange() {
	if s.shown(detailView) || s.size.Width < wideFrom || len(s.ghost.Side[0]) == 0 {
		return // the detail shows it better, or there is no room
	}
	l := s.views[frontView]
	arm := s.rig.arm[l.side]
	now := l.on(arm)
	l.at = &s.ghost
	was := l.on(arm)
	x := max(now.X, was.X) + 26
	s.drop(frontView, was, now, x)
}

// drawDetailChange dimensions drop and length of the left steering arm, from those of the
// reference.
func (s *Stage) drawDetailChange() {
	if len(s.ghost.Side[0]) == 0 {
		return
	}
	l := s.views[detailView]
	foot := l.on(ref{group: footGroup})
	now := l.on(s.rig.arm[solver.Left])
	l.at = &s.ghost
	was := l.on(s.rig.arm[solver.Left])
	away := 1.0 // of the arm from the steering axis, on the paper
	if now.X < foot.X {
		away = -1
	}
	s.drop(detailView, was, now, was.X+away*dimensionOff)
	if length := s.changeOf("steeringArmLength"); math.Abs(length) > smallest {
		y := max(was.Y, now.Y) + dimensionOff
		s.dimension(detailView, 1, length, func(width float64) {
			s.dim.Horizontal(was, now, y, width, figureSize)
			s.keepFigure(detailView, width)
		})
	}
}

// drop dimensions the change in height of the arm's ball, with its figure upright above
// the line.
func (s *Stage) drop(v int, was, now plot.Point, x float64) {
	drop := s.changeOf("tieRodOuterHeight")
	if !(math.Abs(drop) > smallest) {
		return
	}
	s.dimension(v, 0, drop, func(width float64) {
		s.dim.Vertical(was, now, x, width, figureSize)
		a := s.areas.view[v]
		middle := max(a.Min.X+width/2, min(x, a.Max.X-width/2-edge))
		s.dim.Text = plot.Anchor{At: plot.Point{X: middle, Y: min(was.Y, now.Y) - 1.8*figureSize}, Align: plot.Middle}
	})
}

// keepFigure puts the figure of a dimension below its line where it would run off the view
// at the right.
func (s *Stage) keepFigure(v int, width float64) {
	right := s.areas.view[v].Max.X - edge // a bold figure is wider than it is reckoned
	at := s.dim.Text.At
	if s.dim.Text.Align == plot.Start && at.X+width > right {
		s.dim.Text.At = plot.Point{X: right - width, Y: at.Y + 1.5*figureSize}
	}
}

// dimensionOff is the distance of a dimension line from the part, in CSS pixels.
const dimensionOff = 30

// dimension draws a dimension with its figure, the change in mm.
func (s *Stage) dimension(v, figure int, change float64, set func(width float64)) {
	text := number.Signed(change, s.numbers.LengthNumber(change))
	if plot.TextWidth(text, figureSize) > s.areas.view[v].Width()-2*edge {
		text = number.Signed(change, s.numbers.LengthDecimal(change)) // its fraction has no room
	}
	set(plot.TextWidth(text, figureSize))
	w := &nodes.views[v]
	s.out.append(w.lines, s.dim.Lines)
	s.out.append(w.heads, s.dim.Heads)
	s.out.anchor(w.figures[figure], s.dim.Text, text)
}
