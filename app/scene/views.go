package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// directions are those of the views, but for the orbit's.
var directions = [viewCount]plot.View{
	frontView: plot.Behind, planView: plot.Plan, sideView: plot.LeftSide, detailView: plot.LeftSide,
}

// captions name the views, as a drawing does.
var captions = [viewCount]string{
	frontView: "Front elevation, from behind", planView: "Plan, forward up", sideView: "Left side, forward left",
	orbitView: "Any side: drag to turn", detailView: "A: left steering arm",
}

// viewMargin keeps parts off the edge of a view's area, in CSS pixels.
const viewMargin = 14

// arrangeViews sets the projection of each view. They are those of the base car at
// ride height, so that nothing shifts under a drag; elevation, plan and side view
// have one scale.
func (s *Stage) arrangeViews() {
	for v := range s.views {
		l := &s.views[v]
		l.rig, l.at, l.home = s.rig, &s.placed, &s.home
		l.near, l.armOnly = v == sideView || v == detailView, v == detailView
	}
	body := s.extent()
	scale := 0.0
	for _, v := range []int{frontView, planView, sideView} {
		if !s.shown(v) {
			continue
		}
		s.views[v].p = plot.Fit(directions[v], inset(s.areas.view[v]), body...)
		if k := s.views[v].p.Scale; scale == 0 || k < scale {
			scale = k
		}
	}
	for _, v := range []int{frontView, planView, sideView} {
		s.views[v].p.Scale = scale
	}
	if s.shown(planView) && s.shown(frontView) {
		s.views[planView].p.Origin.X = s.views[frontView].p.Origin.X
	}
	if s.shown(orbitView) {
		s.views[orbitView].p = plot.Fit(s.desk.View.View3(), inset(s.areas.view[orbitView]), body...)
	}
	s.arrangeDetail()
}

func inset(r plot.Rect) plot.Rect { return r.Inset(viewMargin, viewMargin, viewMargin, viewMargin) }

// linkPart is how far ahead and behind the wheel centres the long links of a solid axle
// are shown, by the tyre's radius: beyond it they run off the view.
const linkPart = 1.4

// extent returns points about all that the views show: the joints and the tyres,
// with their travel.
func (s *Stage) extent() []plot.Vec {
	var all []plot.Vec
	radius := s.car.Axle.TyreRadius()
	s.rig.points(&s.home, func(x ref) {
		v := s.rig.place(&s.home, x)
		if x.group == commonGroup {
			v.X = max(-linkPart*radius, min(v.X, linkPart*radius))
		}
		all = append(all, v)
	})
	for _, side := range solver.Sides {
		c := s.rig.place(&s.home, s.rig.wheel[side])
		half := plot.Vec{X: radius, Y: radius * tyreWidthPart / 2, Z: radius}
		all = append(all, c.Add(half), c.Sub(half))
		for _, t := range []int{0, len(s.cars.Travels) - 1} {
			if t >= 0 && t < len(s.cars.Travels) {
				all = append(all, c.Add(plot.Vec{Z: s.cars.Travels[t]}))
			}
		}
	}
	return all
}

// drawViews fills the slots of the views on the sheet.
func (s *Stage) drawViews() {
	for v := range s.views {
		if s.shown(v) {
			s.drawView(v)
		}
	}
	if s.shown(frontView) {
		s.drawInstant()
		s.drawFrontChange()
	}
	if s.shown(detailView) {
		s.drawDetailRim()
		s.drawDetailChange()
	}
}

// drawView draws the car in a view.
func (s *Stage) drawView(v int) {
	l, w := &s.views[v], &nodes.views[v]
	l.wheels(s.car.Axle.TyreRadius())
	l.draw()
	for i, slot := range []Slot{w.part, w.body, w.knuckle, w.rod} {
		s.out.append(slot, l.paths[i])
	}
	s.out.append(w.ball, l.joint)
	s.drawTyres(v)
	s.drawGround(v)
	s.drawAxis(v)
	s.drawGhost(v)
	s.drawPointed(v)
	a := s.areas.view[v]
	s.out.draw(w.clip, func(p plot.Path) plot.Path { return s.appendClip(p, v) })
	if s.areas.fans { // on a narrow sheet there is no room, and no other view
		s.out.write(w.caption, plot.Point{X: a.Centre().X, Y: a.Max.Y + caption - 6}, captions[v])
	}
}

// drawGhost draws the steering arms and tie rods of the base car under those of a
// candidate.
func (s *Stage) drawGhost(v int) {
	if s.car.Index == 0 || len(s.ghost.Side[0]) == 0 {
		return
	}
	l := s.views[v]
	l.at = &s.ghost
	for i := range s.rig.bars {
		b := &s.rig.bars[i]
		if l.shows(b.from) && (b.layer == rodLayer && !l.armOnly || b.from.group == footGroup) {
			s.out.draw(nodes.views[v].ghost, func(p plot.Path) plot.Path {
				p = appendBar(p, l.on(b.from), l.on(b.to), l.width(b.width))
				return p.Circle(l.on(b.to), l.ball())
			})
		}
	}
}

// drawPointed rings the point that is pointed out and names it.
func (s *Stage) drawPointed(v int) {
	name := s.desk.View.Point
	if name == "" {
		return
	}
	l := &s.views[v]
	s.rig.points(&s.placed, func(x ref) {
		if s.rig.name(x) != name || x.group == sideGroup && x.side != s.desk.View.PointSide {
			return
		}
		at := l.on(x)
		if !s.areas.view[v].Contains(at) {
			return
		}
		s.out.draw(nodes.views[v].pointed, func(p plot.Path) plot.Path { return p.Circle(at, l.ball()+6) })
		s.out.write(nodes.views[v].name, plot.Point{X: at.X, Y: at.Y - l.ball() - 11}, s.rig.label(x))
	})
}
