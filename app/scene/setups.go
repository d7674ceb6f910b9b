package scene

import (
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/solver"
)

// drawSetUps draws the selected car as each set-up of the search has it, and that which
// decides in another stroke. A study that cannot be searched has none drawn: the panel
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
}

// appendSetUp appends the toe change of the chart's wheel in one set-up; nothing where
// the search does not judge that wheel.
func (s *Stage) appendSetUp(p plot.Path, c *chart, up *engine.ScenarioResult) plot.Path {
	units := s.desk.Session.Document().Units
	for i := range up.Curves {
		k := &up.Curves[i]
		if k.Side != c.side.String() {
			continue
		}
		x, y := make([]float64, len(k.Change)), make([]float64, len(k.Change))
		for j := range k.Change {
			x[j] = s.numbers.ToeValue(solver.Deg(k.Change[j]))
			y[j] = units.Convert(k.Travel[j], s.numbers.Units)
		}
		p = c.frame.AppendMonotone(p, plot.Vertical, x, y)
	}
	return p
}
