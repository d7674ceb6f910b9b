package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// detailReach is how much a detail shows about the ball of the arm, mm.
const detailReach = 75

// arrangeDetail fits the detail about the left steering arm.
func (s *Stage) arrangeDetail() {
	if !s.shown(detailView) {
		return
	}
	var about []plot.Vec
	for _, x := range []ref{s.rig.arm[solver.Left], {group: footGroup, side: solver.Left}} {
		v := s.rig.place(&s.home, x)
		d := plot.Vec{X: detailReach, Z: detailReach}
		about = append(about, v.Add(d), v.Sub(d))
	}
	c, r := s.detailCircle()
	s.views[detailView].p = plot.Fit(plot.LeftSide, plot.Box(c.X-r, c.Y-r, 2*r, 2*r), about...)
}

// drawDetailRim draws the window of the detail, and marks in the side view what it
// shows.
func (s *Stage) drawDetailRim() {
	s.out.draw(nodes.views[detailView].rim, func(p plot.Path) plot.Path { return p.Circle(s.detailCircle()) })
	if !s.shown(sideView) {
		return
	}
	d, v := &s.views[detailView], &s.views[sideView]
	_, r := s.detailCircle()
	at, small := v.p.At(d.p.Centre), r/d.p.Scale*v.p.Scale
	s.out.draw(nodes.views[sideView].rim, func(p plot.Path) plot.Path { return p.Circle(at, small) })
	s.out.write(nodes.views[sideView].letter, plot.Point{X: at.X + small*0.75 + 5, Y: at.Y + small*0.75 + 10}, "A")
}

// appendClip appends what a view is cut to: its area, or the round window of the
// detail.
func (s *Stage) appendClip(p plot.Path, v int) plot.Path {
	if v == detailView {
		return p.Circle(s.detailCircle())
	}
	a := s.areas.view[v].Inset(-edge, -edge, -edge, 0)
	if l := &s.views[v]; l.near && v != sideView {
		a = l.cutAtMiddle(a)
	}
	return p.Rect(a)
}

// detailCircle returns centre and radius of the detail's window.
func (s *Stage) detailCircle() (plot.Point, float64) {
	a := s.areas.view[detailView]
	return a.Centre(), min(a.Width(), a.Height())/2 - 2
}
