package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// Sizes of the sign of symmetry at the ends of a centre line, in CSS pixels: two short
// strokes across it, as drawings have it.
const (
	strokeLength = 14
	strokeApart  = 4
)

// drawMiddle draws the centre line of a view that shows one side alone and, where that
// stands for both, the sign of symmetry at its ends.
func (s *Stage) drawMiddle(v int) {
	l, w := &s.views[v], &nodes.views[v]
	if !l.near || v != frontView && v != planView {
		return
	}
	hub := l.p.At(s.rig.place(&s.home, s.rig.wheel[l.side]))
	x, half := l.centreLine(), s.car.Axle.TyreRadius()*l.p.Scale
	s.out.draw(w.middle, func(p plot.Path) plot.Path {
		return p.Polyline(plot.Point{X: x, Y: hub.Y - half}, plot.Point{X: x, Y: hub.Y + half})
	})
	if !s.form.half {
		return
	}
	across := plot.Point{X: strokeLength / 2}
	s.out.draw(w.strokes, func(p plot.Path) plot.Path {
		for _, y := range []float64{-half - strokeApart, -half, half, half + strokeApart} {
			at := plot.Point{X: x, Y: hub.Y + y}
			p = p.Polyline(at.Sub(across), at.Add(across))
		}
		return p
	})
}

// centreLine returns where the middle of the car stands on the paper of an elevation or
// plan.
func (l *linkage) centreLine() float64 { return l.p.At(plot.Vec{}).X }

// cutAtMiddle returns the area of a view up to the centre line where it shows one side
// alone.
func (l *linkage) cutAtMiddle(a plot.Rect) plot.Rect {
	if x := l.centreLine(); l.p.At(plot.Vec{Y: [...]float64{1, -1}[l.side]}).X < x {
		a.Max.X = x
	} else {
		a.Min.X = x
	}
	return a
}

// writeTravel writes below each wheel of the elevation where it stands.
func (s *Stage) writeTravel() {
	l := &s.views[frontView]
	for _, side := range solver.Sides {
		if !l.showsSide(side) {
			continue
		}
		w := l.tyre[side]
		foot := l.p.At(plot.Vec{X: w.Centre.X, Y: w.Centre.Y, Z: w.Centre.Z - w.Radius})
		s.out.write(nodes.views[frontView].travel[side], plot.Point{X: foot.X, Y: foot.Y + travelRow - 4}, s.numbers.TravelWords(s.travel[side]))
	}
}
