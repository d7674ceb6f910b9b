package scene

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/solver"
)

// drawSetUps draws the selected car as each set-up of the search has it, and that which
// decides in a stronger stroke. A study that cannot be searched has none drawn: the panel
// says why.
func (s *Stage) drawSetUps(c *chart) {
	list, _ := s.desk.SetUps()
	draw := func(slot Slot, binding bool) {
		s.out.draw(slot, func(p plot.Path) plot.Path {
			for i := range list {
				if list[i].Binds == binding {
					p = s.appendSetUp(p, c, &list[i])
				}
			}
			return p
		})
	}
	draw(c.slots.setUps, false)
	draw(c.slots.binding, true)
	s.nameSetUps(c, list)
}

// appendSetUp appends the toe change of the chart's wheel in one set-up; nothing where
// the search does not judge that wheel.
func (s *Stage) appendSetUp(p plot.Path, c *chart, up *engine.ScenarioResult) plot.Path {
	x, y := s.setUpCurve(c, up)
	return c.frame.AppendMonotone(p, plot.Vertical, x, y)
}

// setUpCurve returns toe change and travel of the chart's wheel in one set-up, in the units
// shown.
func (s *Stage) setUpCurve(c *chart, up *engine.ScenarioResult) (x, y []float64) {
	units := s.desk.Session.Document().Units
	for i := range up.Curves {
		k := &up.Curves[i]
		if k.Side != c.side.String() {
			continue
		}
		for j := range k.Change {
			x = append(x, s.numbers.ToeValue(solver.Deg(k.Change[j])))
			y = append(y, units.Convert(k.Travel[j], s.numbers.Units))
		}
	}
	return x, y
}

// namesFrom is the width of a chart, in CSS pixels, from which each set-up is named: on a
// narrower one that which decides, as all of them would lie over the curves.
const namesFrom = 280

// nameSetUps writes the name of each set-up at the lower end of its curve, one above the
// other where they would touch.
func (s *Stage) nameSetUps(c *chart, list []engine.ScenarioResult) {
	var taken [maxSetUps]plot.Rect
	used := 0
	for i := range list {
		if c.frame.Area.Width() < namesFrom && !list[i].Binds {
			continue
		}
		x, y := s.setUpCurve(c, &list[i])
		if len(x) == 0 || used == maxSetUps || !c.frame.X.Contains(x[0]) {
			continue
		}
		a := c.frame.Area
		half := plot.TextWidth(list[i].Name, tickSize)/2 + 2
		at := c.frame.At(x[0], y[0])
		at.X = math.Max(a.Min.X+half, math.Min(a.Max.X-half, at.X))
		at.Y = math.Min(at.Y, a.Max.Y) - 5
		box := func() plot.Rect { return plot.Box(at.X-half, at.Y-tickSize, 2*half, tickSize+2) }
		for overlapsAny(box(), taken[:used]) {
			at.Y -= tickSize + 2
		}
		taken[used] = box()
		s.out.write(c.slots.setUpNames[used], at, list[i].Name)
		used++
	}
}

// overlapsAny reports whether a box lies over one of others.
func overlapsAny(r plot.Rect, others []plot.Rect) bool {
	for _, o := range others {
		if r.Overlaps(o) {
			return true
		}
	}
	return false
}
