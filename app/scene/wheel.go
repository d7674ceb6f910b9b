package scene

import (
	"math"

	"toewright/internal/plot"
	"toewright/solver"
)

// drawTyres draws the tyres and rims; the detail has none.
func (s *Stage) drawTyres(v int) {
	l := &s.views[v]
	if v == detailView {
		return
	}
	for _, side := range solver.Sides {
		if !l.showsSide(side) {
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
		if !l.showsSide(side) {
			continue
		}
		s.out.draw(nodes.views[v].ground, func(p plot.Path) plot.Path { return l.appendGround(p, side) })
	}
}

// appendGround appends the ground under a wheel.
func (l *linkage) appendGround(p plot.Path, side solver.Side) plot.Path {
	w := l.tyre[side]
	foot := l.p.At(plot.Vec{X: w.Centre.X, Y: w.Centre.Y, Z: w.Centre.Z - w.Radius})
	half := plot.Point{X: w.Radius * groundPart * l.p.Scale}
	return plot.AppendHatch(p, foot.Sub(half), foot.Add(half), plot.Point{Y: 6})
}

// axisOver is how far the line of a steering axis is drawn beyond its joints, as a
// part of their distance.
const axisOver = 0.35

// drawAxis draws the steering axes.
func (s *Stage) drawAxis(v int) {
	if v == planView || v == orbitView {
		return
	}
	l := &s.views[v]
	for _, side := range solver.Sides {
		if l.showsSide(side) {
			s.out.draw(nodes.views[v].axis, func(p plot.Path) plot.Path { return l.appendAxis(p, side) })
		}
	}
}

// appendAxis appends the steering axis of a side, where it runs through joints.
func (l *linkage) appendAxis(p plot.Path, side solver.Side) plot.Path {
	if !l.hasAxis() {
		return p
	}
	lower, upper := l.on(l.axes[side][0]), l.on(l.axes[side][1])
	return p.Polyline(lower.Towards(upper, -axisOver), upper.Towards(lower, -axisOver))
}
