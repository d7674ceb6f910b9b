package scene

import (
	"math"

	"toewright/internal/plot"
	"toewright/solver"
)

// crossSize is the size of the sign of a centre, in CSS pixels.
const crossSize = 7

// drawInstant draws in the elevation the lines from the contact points through the
// instant centres, and the roll centre where they meet.
func (s *Stage) drawInstant() {
	if !s.desk.View.Instant {
		return
	}
	now, ok := s.instants()
	if !ok {
		return
	}
	p := s.views[frontView].p
	w := &nodes.views[frontView]
	centre := solver.NewRollCentre(now[solver.Left], now[solver.Right])
	for _, n := range now {
		from, through := p.At(plot.Vec(n.Contact)), p.At(plot.Vec(n.FrontCentre))
		s.out.draw(w.instant, func(d plot.Path) plot.Path { return appendRay(d, from, through) })
	}
	at := p.At(plot.Vec{Y: centre.Y, Z: centre.Z})
	if !s.areas.view[frontView].Contains(at) {
		return
	}
	s.out.draw(w.instant, func(d plot.Path) plot.Path { return appendCross(d, at) })
	name := plot.Anchor{At: plot.Point{X: at.X + crossSize + 3, Y: at.Y - 4}}
	if s.views[frontView].near { // beyond the centre line there is nothing
		name = plot.Anchor{At: plot.Point{X: at.X - crossSize - 3, Y: at.Y - 4}, Align: plot.End}
	}
	s.out.anchor(w.centre, name, "roll centre, height "+s.numbers.Length(centre.Height))
}

// instants returns what holds of both wheels for the smallest movement from where they
// stand.
func (s *Stage) instants() (now [2]*solver.Instant, ok bool) {
	l, r := s.travel[solver.Left], s.travel[solver.Right]
	in := solver.SweepInput{Travels: []float64{0}, Instant: true,
		From: solver.Attitude{Heave: (l + r) / 2, Roll: (r - l) / 2, Steer: s.desk.View.Steer}}
	if s.car.Axle.Sweep(s.ws, &in, &s.instant) != nil {
		return now, false
	}
	for _, side := range solver.Sides {
		if len(s.instant[side].Positions) != 1 {
			return now, false
		}
		now[side] = &s.instant[side].Positions[0].Instant
	}
	return now, true
}

// farAway is the length of a line whose end is farther than any paper, in CSS pixels.
const farAway = 4000

// appendRay appends a line from a point to another, or towards it where it is far off.
func appendRay(dst plot.Path, from, to plot.Point) plot.Path {
	d := to.Sub(from)
	if l := d.Length(); !(l <= farAway) {
		if math.IsInf(l, 0) || math.IsNaN(l) {
			return dst
		}
		to = from.Add(d.Unit().Times(farAway))
	}
	return dst.Polyline(from, to)
}

// appendCross appends the sign of a centre: a circle with a cross.
func appendCross(dst plot.Path, at plot.Point) plot.Path {
	dst = dst.Circle(at, crossSize*0.6)
	for _, d := range []plot.Point{{X: crossSize}, {Y: crossSize}} {
		dst = dst.Polyline(at.Sub(d), at.Add(d))
	}
	return dst
}
