package scene

import (
	"math"

	"toewright/app/plot"
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
	if s.shown(planView) {
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

// drawTyres draws the tyres and rims; the side view has only the near wheel, and the
// detail none.
func (s *Stage) drawTyres(v int) {
	l := &s.views[v]
	if v == detailView {
		return
	}
	for _, side := range solver.Sides {
		if v == sideView && side == solver.Right {
			continue
		}
		wheel := l.tyre[side]
		s.out.draw(nodes.views[v].tyre, func(p plot.Path) plot.Path { return appendWheel(p, l.p, wheel) })
	}
}

// edgeOn is the part of a wheel's face that must be seen for its rim to be drawn: less
// would be a line across the tyre.
const edgeOn = 0.12

// appendWheel appends a tyre with its rim; seen edge-on, the tyre's section with round
// shoulders.
func appendWheel(dst plot.Path, p plot.Projection, w plot.Wheel) plot.Path {
	if face := math.Abs(w.Axis.Dot(p.Out)); face < edgeOn {
		return appendSection(dst, p, w)
	}
	rim := w
	rim.Radius *= rimPart
	return p.AppendDisc(p.AppendTyre(dst, w), rim)
}

// shoulder is the radius of a tyre's shoulders by its width.
const shoulder = 0.22

// appendSection appends the outline of a tyre seen edge-on, and the edges of its tread.
func appendSection(dst plot.Path, p plot.Projection, w plot.Wheel) plot.Path {
	across := p.Step(w.Axis).Unit()
	along := across.Across()
	c, half, r := p.At(w.Centre), w.Width/2*p.Scale, w.Radius*p.Scale
	round := shoulder * w.Width * p.Scale
	at := func(x, y float64) plot.Point { return c.Add(across.Times(x)).Add(along.Times(y)) }
	dst = dst.MoveTo(at(round-half, -r)).LineTo(at(half-round, -r)).ArcTo(round, round, 0, false, true, at(half, round-r))
	dst = dst.LineTo(at(half, r-round)).ArcTo(round, round, 0, false, true, at(half-round, r))
	dst = dst.LineTo(at(round-half, r)).ArcTo(round, round, 0, false, true, at(-half, r-round))
	dst = dst.LineTo(at(-half, round-r)).ArcTo(round, round, 0, false, true, at(round-half, -r)).Close()
	return dst.Polyline(at(round-half, -r), at(round-half, r)).Polyline(at(half-round, -r), at(half-round, r))
}

// appendClip appends what a view is cut to: its area, or the round window of the
// detail.
func (s *Stage) appendClip(p plot.Path, v int) plot.Path {
	if v == detailView {
		return p.Circle(s.detailCircle())
	}
	a := s.areas.view[v]
	return p.Rect(a.Inset(-edge, -edge, -edge, 0))
}

// detailCircle returns centre and radius of the detail's window.
func (s *Stage) detailCircle() (plot.Point, float64) {
	a := s.areas.view[detailView]
	return a.Centre(), min(a.Width(), a.Height())/2 - 2
}

// groundPart is the length of the ground under a tyre by its radius.
const groundPart = 0.75

// drawGround draws the ground under each tyre: it rises and falls with the wheel,
// for the body is what is held.
func (s *Stage) drawGround(v int) {
	if v == planView || v == detailView || v == orbitView {
		return
	}
	l := &s.views[v]
	for _, side := range solver.Sides {
		if v == sideView && side == solver.Right {
			continue
		}
		w := l.tyre[side]
		foot := l.p.At(plot.Vec{X: w.Centre.X, Y: w.Centre.Y, Z: w.Centre.Z - w.Radius})
		half := plot.Point{X: w.Radius * groundPart * l.p.Scale}
		s.out.draw(nodes.views[v].ground, func(p plot.Path) plot.Path {
			return plot.AppendHatch(p, foot.Sub(half), foot.Add(half), plot.Point{Y: 6})
		})
	}
}

// axisOver is how far the line of a steering axis is drawn beyond its joints, as a
// part of their distance.
const axisOver = 0.35

// drawAxis draws the steering axes, where they run through joints.
func (s *Stage) drawAxis(v int) {
	if !s.rig.hasAxis() || v == planView || v == orbitView {
		return
	}
	l := &s.views[v]
	for _, side := range solver.Sides {
		if side == solver.Right && v != frontView {
			continue
		}
		lower, upper := l.on(s.rig.axes[side][0]), l.on(s.rig.axes[side][1])
		from, to := lower.Towards(upper, -axisOver), upper.Towards(lower, -axisOver)
		s.out.draw(nodes.views[v].axis, func(p plot.Path) plot.Path { return p.Polyline(from, to) })
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
