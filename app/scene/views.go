package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// directions are those of the views, but for the orbit's.
var directions = [viewCount]plot.View{
	frontView: plot.Behind, planView: plot.Plan, sideView: plot.LeftSide, detailView: plot.LeftSide,
}

// ahead is the view from the front, in which the right wheel stands at the left, next to
// its chart.
var ahead = plot.View{Right: plot.Vec{Y: 1}, Up: plot.Vec{Z: 1}, Out: plot.Vec{X: 1}}

// captionOf names a view, as a drawing does.
func (s *Stage) captionOf(v int) string {
	half := ""
	if s.form.half && (v == frontView || v == planView) {
		half = ", half"
	}
	switch v {
	case planView:
		return "Plan, forward up" + half
	case sideView:
		return "Left side, forward left"
	case orbitView:
		return "Any side: drag to turn"
	case detailView:
		return "A: left steering arm"
	}
	if s.rigOf.Gear.Kind == solver.NoGear {
		return "Rear view of axle" + half
	}
	return "Rear view of front axle" + half
}

// viewMargin keeps parts off the edge of a view's area, in CSS pixels.
const viewMargin = 8

// arrangeViews sets the projection of each view. They are those of the base car at
// ride height, so that nothing shifts under a drag.
func (s *Stage) arrangeViews() {
	for v := range s.views {
		l := &s.views[v]
		l.rig, l.at, l.home = s.rig, &s.placed, &s.home
		l.near, l.armOnly, l.side = s.oneSided(v), v == detailView, solver.Left
		if v == frontView || v == planView {
			l.side = s.form.side
		}
	}
	s.breakOut()
	for _, v := range []int{frontView, planView, sideView, orbitView} {
		if s.shown(v) {
			s.views[v].p = plot.Fit(s.direction(v), inset(s.areas.view[v]), s.extent(&s.views[v])...)
		}
	}
	if s.areas.large == frontView {
		s.level()
	}
	s.arrangeDetail()
}

// oneSided reports whether a view shows one side of the car alone: the side view and the
// detail always do, elevation and plan where that side has the only chart, unless the sides
// are joined by an axle.
func (s *Stage) oneSided(v int) bool {
	switch v {
	case orbitView:
		return false
	case frontView, planView:
		return s.form.half || s.lone() && len(s.rig.kind.CommonPoints) == 0
	}
	return true
}

// direction returns that of a view.
func (s *Stage) direction(v int) plot.View {
	switch {
	case v == orbitView:
		return s.desk.View.View3()
	case v == frontView && s.lone() && s.form.side == solver.Right:
		return ahead
	}
	return directions[v]
}

// level brings the wheel's centre at ride height to the level of the chart's zero, as
// large as there is room above and below.
func (s *Stage) level() {
	l, a := &s.views[frontView], inset(s.areas.view[frontView])
	side := s.form.side
	zero := s.charts[side].frame.Y.At(0)
	hub := s.rig.place(&s.home, s.rig.wheel[side])
	p := &l.p
	for _, v := range s.extent(l) {
		switch d := v.Z - hub.Z; {
		case d > 0:
			p.Scale = min(p.Scale, (zero-a.Min.Y)/d)
		case d < 0:
			p.Scale = min(p.Scale, (a.Max.Y-travelRow-zero)/-d)
		}
	}
	p.Origin.Y += zero - p.At(hub).Y
	tyre := l.paper(hub).X - s.car.Axle.TyreRadius()*tyreWidthPart/2*p.Scale
	if room := tyre - a.Min.X - 2*bracketGap; l.near && room > 0 { // next to the chart
		p.Origin.X -= room
	}
}

// travelRow is the height of the text below the ground, in CSS pixels.
const travelRow = 24

func inset(r plot.Rect) plot.Rect { return r.Inset(viewMargin, viewMargin, viewMargin, viewMargin) }

// linkPart is how far ahead and behind the wheel centres the long links of a solid axle
// are shown, by the tyre's radius: beyond it they run off the view.
const linkPart = 1.4

// extent returns points about all that a view shows.
func (s *Stage) extent(l *linkage) []plot.Vec {
	return l.extent(s.car.Axle.TyreRadius(), s.cars.Travels)
}

// extent returns points about all that a view shows at ride height: the joints and the tyres
// of a radius, with the travels, mm, and of a view of one side the centre line.
func (l *linkage) extent(radius float64, travels []float64) []plot.Vec {
	var all []plot.Vec
	l.points(l.home, func(x ref) {
		if !l.shows(x) {
			return
		}
		v := l.place(l.home, x)
		if x.group == commonGroup {
			v.X = max(-linkPart*radius, min(v.X, linkPart*radius))
		}
		all = append(all, l.closed(l.toCentreLine(v)))
	})
	for _, side := range solver.Sides {
		if !l.showsSide(side) {
			continue
		}
		c := l.closed(l.place(l.home, l.wheel[side]))
		half := plot.Vec{X: radius, Y: radius * tyreWidthPart / 2, Z: radius}
		all = append(all, c.Add(half), c.Sub(half))
		if n := len(travels); n > 0 {
			all = append(all, c.Sub(half).Add(plot.Vec{Z: travels[0]}), c.Add(half).Add(plot.Vec{Z: travels[n-1]}))
		}
	}
	return append(all, l.closed(l.toCentreLine(l.place(l.home, l.wheel[solver.Right-l.side]))))
}

// toCentreLine returns a point or, where it lies beyond the centre line of a view of one
// side, that on the centre line.
func (l *linkage) toCentreLine(v plot.Vec) plot.Vec {
	if l.near && (v.Y > 0) != (l.side == solver.Left) {
		v.Y = 0
	}
	return v
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
		s.writeTravel()
		s.drawBreak()
	}
	s.drawLoads()
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
	s.drawMiddle(v)
	s.out.draw(w.clip, func(p plot.Path) plot.Path { return s.appendClip(p, v) })
	s.writeCaption(v)
}

// writeCaption names a view: the large one above, the others below. A narrow sheet has no
// room for it, and no other view.
func (s *Stage) writeCaption(v int) {
	a, slot := s.areas.view[v], nodes.views[v].caption
	switch {
	case s.size.Width < wideFrom:
	case v != s.areas.large:
		s.out.write(slot, plot.Point{X: a.Centre().X, Y: a.Max.Y + caption - 6}, s.captionOf(v))
	case s.lone():
		s.out.anchor(slot, plot.Anchor{At: plot.Point{X: a.Max.X, Y: above - 12}, Align: plot.End}, s.captionOf(v))
	default:
		s.out.write(slot, plot.Point{X: a.Centre().X, Y: above - 12}, s.captionOf(v))
	}
}

// drawGhost draws the steering arms and tie rods of the reference under those of another
// car.
func (s *Stage) drawGhost(v int) {
	if s.car.Index == s.reference() || len(s.ghost.Side[0]) == 0 {
		return
	}
	s.out.draw(nodes.views[v].ghost, func(p plot.Path) plot.Path { return s.views[v].appendGhost(p, &s.ghost) })
}

// appendGhost appends the steering arms and tie rods as another car has them.
func (l linkage) appendGhost(p plot.Path, other *solver.Placed) plot.Path {
	l.at = other
	for i := range l.bars {
		b := &l.bars[i]
		if l.showsBar(b) && (b.layer == rodLayer && !l.armOnly || b.from.group == footGroup) {
			p = appendBar(p, l.on(b.from), l.on(b.to), l.width(b.width)).Circle(l.on(b.to), l.ball())
		}
	}
	return p
}

// drawPointed rings the point that is pointed out, and names it in the large view, unless its
// name stands beside the cell that is picked.
func (s *Stage) drawPointed(v int) {
	name := s.desk.View.Point
	if name == "" {
		return
	}
	l := &s.views[v]
	s.rig.points(&s.placed, func(x ref) {
		if s.rig.name(x) != name || x.group == sideGroup && x.side != s.desk.View.PointSide || !l.shows(x) {
			return
		}
		at := l.on(x)
		if !s.areas.view[v].Contains(at) {
			return
		}
		s.out.draw(nodes.views[v].pointed, func(p plot.Path) plot.Path { return p.Circle(at, l.ball()+6) })
		if name != s.desk.View.Picked && (v == s.areas.large || !s.views[s.areas.large].shows(x)) {
			s.out.write(nodes.views[v].name, plot.Point{X: at.X, Y: at.Y - l.ball() - 11}, s.rig.label(x))
		}
	})
}
