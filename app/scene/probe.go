package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// chartReach is how far outside the frame of a chart a pointer still means it, in CSS
// pixels.
const chartReach = 6

// ChartAt returns the side whose chart lies at a place.
func (s *Stage) ChartAt(at plot.Point) (solver.Side, bool) {
	for _, side := range solver.Sides {
		if s.charted(side) && s.areas.chart[side].Inset(-chartReach, -chartReach, -chartReach, -chartReach).Contains(at) {
			return side, true
		}
	}
	return 0, false
}

// TyreAt returns the side whose tyre lies at a place of the elevation.
func (s *Stage) TyreAt(at plot.Point) (solver.Side, bool) {
	if !s.shown(frontView) {
		return 0, false
	}
	v := &s.views[frontView]
	for _, side := range solver.Sides {
		if !v.showsSide(side) {
			continue
		}
		w := v.tyre[side]
		c := v.p.At(w.Centre)
		half := plot.Point{X: w.Width / 2 * v.p.Scale, Y: w.Radius * v.p.Scale}
		if (plot.Rect{Min: c.Sub(half), Max: c.Add(half)}).Contains(at) {
			return side, true
		}
	}
	return 0, false
}

// OrbitAt reports whether a place lies in the view that can be turned.
func (s *Stage) OrbitAt(at plot.Point) bool {
	return s.areas.view[orbitView].Contains(at) && s.shown(orbitView)
}

// TravelAt returns the travel at a place of a chart, in mm, within what the selected
// car reaches.
func (s *Stage) TravelAt(side solver.Side, at plot.Point) float64 {
	_, travel := s.charts[side].frame.Invert(at)
	return s.Within(side, s.numbers.Units.Millimetres(travel))
}

// Within returns the travel nearest to a wanted one that the selected car reaches, in
// mm.
func (s *Stage) Within(side solver.Side, travel float64) float64 {
	if s.car == nil {
		return 0
	}
	var both [2]float64
	both[side] = travel
	return within(s.car, both)[side]
}

// SampleAt returns travel in mm and toe change in radians at a place of a chart.
func (s *Stage) SampleAt(side solver.Side, at plot.Point) plot.Sample {
	toe, _ := s.charts[side].frame.Invert(at)
	return plot.Sample{At: s.TravelAt(side, at), Value: s.numbers.ToeOf(toe).Radians()}
}

// jointReach is how near a pointer must be to a joint to have it named, in CSS pixels.
const jointReach = 12

// JointAt returns the joint at a place of any view, by its key and side; empty where
// there is none.
func (s *Stage) JointAt(at plot.Point) (key string, side solver.Side) {
	if s.car == nil {
		return "", 0
	}
	best := float64(jointReach)
	for v := range s.views {
		if !s.shown(v) || !s.areas.view[v].Contains(at) {
			continue
		}
		s.rig.points(&s.placed, func(x ref) {
			if !s.views[v].shows(x) {
				return
			}
			if d := s.views[v].on(x).Sub(at).Length(); d < best {
				best, key, side = d, s.rig.name(x), x.side
			}
		})
	}
	return key, side
}
