package scene

import (
	"math"
	"unicode/utf8"

	"toewright/internal/plot"
	"toewright/solver"
)

// tickSize is the text size of figures along the axes, in CSS pixels.
const tickSize = 11

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
	s.writeTitles(c)
}

// toeTickCount is how many figures have room under a chart.
func toeTickCount(width float64) int { return min(max(int(width/32), 4), maxToeTicks) }

func (s *Stage) travelTicks(f plot.Frame) []plot.Tick {
	most := min(max(int(f.Area.Height()/26), 3), maxTravelTicks)
	if s.numbers.Fractions() {
		return plot.FractionTicks(nil, f.Y.Domain, most)
	}
	return plot.Ticks(nil, f.Y.Domain, most)
}

// writeTicks writes the figures: those of travel outside, those of toe below.
func (s *Stage) writeTicks(c *chart, travels, toes []plot.Tick) {
	x := c.frame.Area.Min.X - 5
	if c.side == solver.Right {
		x = c.frame.Area.Max.X + 5
	}
	for i, t := range travels[:min(len(travels), maxTravelTicks)] {
		s.out.write(c.slots.travelTicks[i], plot.Point{X: x, Y: c.frame.Y.At(t.Value) + tickSize*0.35}, t.Label)
	}
	y := c.frame.Area.Max.Y + tickSize + 3
	for i, t := range toes[:min(len(toes), maxToeTicks)] {
		s.out.write(c.slots.toeTicks[i], plot.Point{X: s.apart(c.frame.Area, c.frame.X.At(t.Value), t.Label), Y: y}, t.Label)
	}
}

// apart returns the place of a figure under a chart, moved inward where it would reach
// beyond half of what lies between the charts.
func (s *Stage) apart(area plot.Rect, x float64, figure string) float64 {
	half := float64(utf8.RuneCountInString(figure)) * tickSize * 0.3 // a digit is 0.6 as wide as high
	between := s.charts[solver.Right].frame.Area.Min.X - s.charts[solver.Left].frame.Area.Max.X
	inward := math.Max(half+1-between/2, 0)
	return math.Max(area.Min.X+inward, math.Min(area.Max.X-inward, x))
}

// writeTitles writes what the chart shows, and which way is toe-in.
func (s *Stage) writeTitles(c *chart) {
	a := c.frame.Area
	middle := a.Centre().X
	s.out.write(c.slots.title, plot.Point{X: middle, Y: a.Min.Y - above + 14}, [...]string{"Left wheel", "Right wheel"}[c.side])
	y := a.Max.Y + 2*tickSize + 8
	s.out.write(c.slots.unit, plot.Point{X: middle, Y: y}, "toe change, "+s.numbers.ToeUnit())
	for i, slot := range []Slot{c.slots.out, c.slots.in} {
		toe := []float64{c.frame.X.Low, c.frame.X.High}[i]
		x := a.Centre().X + (c.frame.X.At(toe)-a.Centre().X)*0.78
		s.out.write(slot, plot.Point{X: x, Y: a.Min.Y + tickSize + 2}, []string{"out", "in"}[i])
	}
}
