package scene

import (
	"math"

	"toewright/internal/plot"
)

const (
	// brokenPart is the part of the width between a car's inmost points that is broken out,
	// where the car stands between two charts: steering moves the points a little.
	brokenPart = 0.85
	// worthBreaking is the least of the width between the wheels that is worth it.
	worthBreaking = 0.12
	// gapWidth is what stands for it on the paper, in CSS pixels.
	gapWidth = 14
)

// breakOut leaves the middle of the elevation out where it stands between two charts: what
// matters stands larger. The lines of the roll centre need it.
func (s *Stage) breakOut() {
	l := &s.views[frontView]
	l.cut = 0
	if l.near || s.areas.large != frontView || s.desk.View.Instant {
		return
	}
	inmost := math.Inf(1)
	s.rig.points(&s.home, func(x ref) { inmost = min(inmost, math.Abs(s.rig.place(&s.home, x).Y)) })
	if wheel := s.rig.place(&s.home, s.rig.wheel[l.side]); inmost > worthBreaking*math.Abs(wheel.Y) {
		l.cut = brokenPart * inmost
	}
}

// drawBreak draws the edges of what is broken out over the parts that cross the middle.
func (s *Stage) drawBreak() {
	l, w := &s.views[frontView], &nodes.views[frontView]
	if l.cut == 0 {
		return
	}
	hub := l.paper(s.rig.place(&s.home, s.rig.wheel[l.side]))
	x, half := l.centreLine(), s.car.Axle.TyreRadius()*l.p.Scale*0.75
	edge := func(x float64) []plot.Point {
		const tooth = 5
		return []plot.Point{
			{X: x, Y: hub.Y - half}, {X: x, Y: hub.Y - 2*tooth}, {X: x - tooth, Y: hub.Y - tooth},
			{X: x + tooth, Y: hub.Y + tooth}, {X: x, Y: hub.Y + 2*tooth}, {X: x, Y: hub.Y + half},
		}
	}
	left, right := edge(x-gapWidth/2), edge(x+gapWidth/2)
	s.out.draw(w.gap, func(p plot.Path) plot.Path {
		p = p.Polyline(left...)
		for i := range right {
			p = p.LineTo(right[len(right)-1-i])
		}
		return p.Close()
	})
	s.out.draw(w.strokes, func(p plot.Path) plot.Path { return p.Polyline(left...).Polyline(right...) })
}
