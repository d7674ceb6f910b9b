package scene

import (
	"maps"
	"math"

	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// drawReadings draws the gauge readings that were taken with the parts of the base
// or the selected car: those of the right wheel too, with a mark of their own, on a chart
// that stands for both. Each run is set to no change at ride height.
func (s *Stage) drawReadings(c *chart) {
	doc, drawn := s.desk.Session.Document(), false
	for i := range doc.Readings {
		r := &doc.Readings[i]
		mark := plot.Plus
		if r.Side.Solver() != c.side {
			mark = plot.Cross
		}
		if mark == plot.Cross && !s.form.half || !s.taken(r) {
			continue
		}
		toes, travels := s.readings(r, s.desk.Session.ReadTravels(i))
		drawn = drawn || len(toes) > 0
		s.out.draw(c.slots.readings, func(p plot.Path) plot.Path {
			return c.frame.AppendMarkers(p, mark, readingSize, toes, travels, 1)
		})
	}
	if drawn {
		s.writeReadingKey(c)
	}
}

// writeReadingKey says in the corner of a chart what the marks of the readings are, where there
// is room left of the middle.
func (s *Stage) writeReadingKey(c *chart) {
	a, list := c.frame.Area, []string{"+ readings", "+ read"}
	if s.form.half {
		list = []string{"read: + left, × right", "+ left, × right"}
	}
	for _, text := range list {
		if plot.TextWidth(text, tickSize)+12 <= a.Width()/2 {
			s.out.write(c.slots.readingKey, plot.Point{X: a.Min.X + 8, Y: a.Max.Y - 8}, text)
			return
		}
	}
}

// readingSize is the size of a reading's mark, in CSS pixels.
const readingSize = 3.2

// taken reports whether a run was taken with the parts of the base or the selected car.
func (s *Stage) taken(r *study.Reading) bool {
	return len(r.Changes) == 0 || maps.Equal(r.Changes, s.car.Changes)
}

// readings returns a run's toe changes and travels in the units shown, from the wheel
// travels in mm; none where those are not known, or where the run has no reading at ride
// height or about it.
func (s *Stage) readings(r *study.Reading, wheel []float64) (toes, travels []float64) {
	for i, mm := range wheel {
		travels = append(travels, s.numbers.Units.FromMillimetres(mm))
		toes = append(toes, s.numbers.ToeValue(readToe(r, r.Values[i][1])))
	}
	zero, ok := plot.Interpolate(travels, toes, 0)
	if !ok {
		return nil, nil
	}
	for i := range toes {
		toes[i] -= zero
	}
	return toes, travels
}

// readToe returns the toe that a gauge reads, none for a gauge that there is not.
func readToe(r *study.Reading, value float64) solver.Angle {
	g, err := optimize.ParseGauge(r.Gauge)
	if err != nil {
		return solver.Angle(math.NaN())
	}
	return g.Toe(value, r.Base)
}
