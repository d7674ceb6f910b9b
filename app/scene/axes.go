package scene

import (
	"math"

	"toewright/internal/number"
	"toewright/internal/plot"
	"toewright/solver"
)

// tickSize is the text size of figures along the axes, headSize that of a chart's heading,
// in CSS pixels.
const (
	tickSize = 12
	headSize = 14
)

// drawAxes draws grid, frame, figures and titles of a chart.
func (s *Stage) drawAxes(c *chart) {
	f := c.frame
	travels := s.travelTicks(f)
	toes := plot.Ticks(nil, f.X.Domain, toeTickCount(f.Area.Width()))
	s.out.draw(c.slots.grid, func(p plot.Path) plot.Path {
		return f.AppendGrid(f.AppendGrid(p, plot.Vertical, travels), plot.Horizontal, toes)
	})
	s.out.draw(c.slots.zero, func(p plot.Path) plot.Path {
		none := []plot.Tick{{}}
		return f.AppendGrid(f.AppendGrid(p, plot.Vertical, none), plot.Horizontal, none)
	})
	s.out.draw(c.slots.frame, func(p plot.Path) plot.Path { return p.Rect(f.Area) })
	s.writeTicks(c, travels, toes)
	s.writeHeading(c)
	s.writeUnit(c)
}

// toeTickCount is how many figures have room under a chart.
func toeTickCount(width float64) int { return min(max(int(width/40), 4), maxToeTicks) }

func (s *Stage) travelTicks(f plot.Frame) []plot.Tick {
	most := min(max(int(f.Area.Height()/28), 3), maxTravelTicks)
	return plot.Ticks(nil, f.Y.Domain, most)
}

// writeTicks writes the figures: those of travel outside, those of toe below.
func (s *Stage) writeTicks(c *chart, travels, toes []plot.Tick) {
	outside := plot.Anchor{At: plot.Point{X: c.frame.Area.Min.X - 6}, Align: plot.End}
	if s.mirrored(c.side) {
		outside = plot.Anchor{At: plot.Point{X: c.frame.Area.Max.X + 6}, Align: plot.Start}
	}
	for i, t := range travels[:min(len(travels), maxTravelTicks)] {
		outside.At.Y = c.frame.Y.At(t.Value) + tickSize*0.35
		s.out.anchor(c.slots.travelTicks[i], outside, figureOf(t))
	}
	y := c.frame.Area.Max.Y + tickSize + 3
	for i, t := range toes[:min(len(toes), maxToeTicks)] {
		figure := figureOf(t)
		s.out.write(c.slots.toeTicks[i], plot.Point{X: s.onSheet(c.frame.X.At(t.Value), figure), Y: y}, figure)
	}
}

// figureOf returns the figure of a tick, with its sign.
func figureOf(t plot.Tick) string {
	if t.Value == 0 {
		return "0"
	}
	return number.Signed(t.Value, t.Label)
}

// onSheet returns the place of the middle of a figure, moved inward where it would run off
// the sheet.
func (s *Stage) onSheet(x float64, figure string) float64 {
	half := plot.TextWidth(figure, tickSize)/2 + 2
	return math.Max(half, math.Min(s.size.Width-half, x))
}

// titles say what the chart shows, the longest that has room first.
func (s *Stage) titles(c *chart) []string {
	switch {
	case s.form.half:
		return []string{"Toe change, left = right", "Left = right"}
	case c.side == solver.Left:
		return []string{"Toe change, left wheel", "Left wheel", "Left"}
	}
	return []string{"Toe change, right wheel", "Right wheel", "Right"}
}

// writeHeading writes what the chart shows and, at the other end of the line, the toe
// change at the marker. On a narrow sheet that line is as long as the sheet is wide.
func (s *Stage) writeHeading(c *chart) {
	a := c.frame.Area
	from, to, y := a.Min.X, a.Max.X, a.Min.Y-12
	if s.size.Width < wideFrom {
		to = s.size.Width - edge
	}
	title, figure := s.heading(c, to-from)
	s.out.write(c.slots.title, plot.Point{X: from, Y: y}, title)
	s.out.write(c.slots.readout, plot.Point{X: to, Y: y}, figure)
}

// heading returns the longest title and figure that stand side by side in a width.
func (s *Stage) heading(c *chart, width float64) (title, figure string) {
	const bold, gap = 1.2, 10
	fits := func() bool {
		return bold*(plot.TextWidth(title, headSize)+plot.TextWidth(figure, headSize))+gap <= width
	}
	long, short := s.figures(c.side)
	if title, figure = s.titles(c)[0], short; s.travel[c.side] == 0 && fits() { // where the peak is can be seen
		if figure = long; !fits() {
			figure = short
		}
		return title, figure
	}
	for _, figure = range []string{long, short} {
		for _, title = range s.titles(c) {
			if fits() {
				return title, figure
			}
		}
	}
	return title, figure
}

// figures are the toe change at the marker and where that is or, at ride height, where there is
// none, the peak of the curve; and the same alone.
func (s *Stage) figures(side solver.Side) (long, short string) {
	toe, travel := s.toeNow(side), s.travel[side]
	short = number.Signed(toe.Radians(), s.numbers.ToeNumber(toe))
	if peak := &s.car.Figures[side]; travel == 0 && peak.Peak > 0 {
		travel, short = peak.PeakTravel, "peak "+s.numbers.ToeNumber(peak.Peak)
	}
	return short + " at " + number.Signed(travel, s.numbers.TravelNumber(travel)), short
}

// writeUnit writes below the figures which way is toe-in, and in between the unit and, as
// far as there is room, what is shaded.
func (s *Stage) writeUnit(c *chart) {
	a := c.frame.Area
	y := a.Max.Y + 2*tickSize + 10
	unit, out, in := s.unitRow(a.Width())
	if s.mirrored(c.side) {
		out, in = "← "+in, out+" →"
	} else {
		out, in = "← "+out, in+" →"
	}
	s.out.write(c.slots.out, plot.Point{X: a.Min.X, Y: y}, out)
	s.out.write(c.slots.in, plot.Point{X: a.Max.X, Y: y}, in)
	s.out.write(c.slots.unit, plot.Point{X: a.Centre().X, Y: y}, unit)
}

// unitRow returns the longest texts of the row below the figures that stand side by side in
// a width.
func (s *Stage) unitRow(width float64) (unit, out, in string) {
	for _, sense := range [][2]string{{"toe-out", "toe-in"}, {"out", "in"}} {
		out, in = sense[0], sense[1]
		for _, unit = range s.units() {
			if plot.TextWidth("←  "+out+unit+in+"  →", tickSize)*1.1+12 <= width {
				return unit, out, in
			}
		}
	}
	return unit, out, in
}

// units say what toe is shown in, the longest text first.
func (s *Stage) units() []string {
	n := s.numbers
	short := n.ToeMark()
	if n.Gauge != number.Degrees {
		short += " per " + n.TravelNumber(n.Base)
	}
	list := []string{n.ToeUnit(), short, n.ToeMark()}
	if s.desk.Session.Document().Search == nil {
		return list
	}
	shaded := "; shaded: target ± " + n.ToeNumber(s.tolerance())
	return append([]string{n.ToeUnit() + shaded, short + shaded, short + "; target ± " + n.ToeNumber(s.tolerance())}, list...)
}
