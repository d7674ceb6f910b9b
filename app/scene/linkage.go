package scene

import (
	"slices"
	"sort"

	"toewright/internal/plot"
	"toewright/solver"
)

// linkage draws a rig in one view.
type linkage struct {
	*rig
	p       plot.Projection
	at      *solver.Placed
	home    *solver.Placed // straight ahead at ride height: where the housing stands
	tyre    [2]plot.Wheel
	near    bool        // shows one side alone
	side    solver.Side // the one that it shows then
	armOnly bool        // leaves tie rod and gear out, which hide the end of the arm

	// cut is how far from its middle a car that is drawn with its middle broken out begins,
	// mm.
	cut float64

	paths [layerCount]plot.Path
	joint plot.Path // balls
}

// Sizes on the paper: small drawings stay legible, and a ball on a large one within the
// ring of its handle.
const (
	minBar  = 3.0
	minBall = 2.6
	maxBall = 6.0
)

// ballRadius is that of a ball joint, mm.
const ballRadius = 15

// on returns the place of a point on the paper.
func (l *linkage) on(x ref) plot.Point { return l.paper(l.place(l.at, x)) }

// paper returns the place of a point of the car on the paper.
func (l *linkage) paper(v plot.Vec) plot.Point { return l.p.At(l.closed(v)) }

// closed returns where a point of the car is drawn, with the middle broken out.
func (l *linkage) closed(v plot.Vec) plot.Vec {
	v.Y -= max(-l.cut, min(l.cut, v.Y))
	return v
}

// width returns a part's width on the paper.
func (l *linkage) width(mm float64) float64 { return max(mm*l.p.Scale, minBar) }

func (l *linkage) ball() float64 { return min(max(ballRadius*l.p.Scale, minBall), maxBall) }

// draw fills the paths, one for each layer, and that of the balls.
func (l *linkage) draw() {
	for i := range l.paths {
		l.paths[i] = l.paths[i][:0]
	}
	l.joint = l.joint[:0]
	if !l.armOnly {
		l.drawHousing()
	}
	l.drawParts()
	for _, x := range l.pivots {
		if l.shows(x) {
			l.paths[bodyLayer] = l.paths[bodyLayer].Circle(l.on(x), l.ball()*pivotPart)
		}
	}
	for _, x := range l.balls {
		if l.shows(x) && !(l.armOnly && l.isInner(x)) {
			l.joint = l.joint.Circle(l.on(x), l.ball())
		}
	}
}

// pivotPart is the radius of a pivot by that of a ball.
const pivotPart = 0.9

// drawParts draws knuckles, bars and struts.
func (l *linkage) drawParts() {
	for _, h := range l.hulls {
		if l.shows(h[0]) {
			l.drawHull(h)
		}
	}
	for i := range l.bars {
		if b := &l.bars[i]; l.showsBar(b) && !(l.armOnly && b.layer == rodLayer) {
			l.drawBar(b)
		}
	}
	for _, s := range l.struts {
		if l.shows(s[0]) {
			l.paths[partLayer] = plot.AppendStrut(l.paths[partLayer], l.on(s[0]), l.on(s[1]), l.width(strutWidth))
		}
	}
}

// shows reports whether the view shows a point.
func (l *linkage) shows(x ref) bool {
	switch x.group {
	case gearGroup:
		return !l.armOnly
	case commonGroup:
		return true
	}
	return l.showsSide(x.side)
}

// showsBar reports whether the view shows a bar, be it to its centre line.
func (l *linkage) showsBar(b *bar) bool { return l.shows(b.from) || l.shows(b.to) }

// showsSide reports whether the view shows a side.
func (l *linkage) showsSide(s solver.Side) bool { return !l.near || s == l.side }

// isInner reports whether a point is an inner ball.
func (l *linkage) isInner(x ref) bool { return l.hasInner && x == l.inner[x.side] }

// drawBar draws a bar as a closed outline.
func (l *linkage) drawBar(b *bar) {
	l.paths[b.layer] = appendBar(l.paths[b.layer], l.on(b.from), l.on(b.to), l.width(b.width))
}

// appendBar appends the outline of a bar with round ends.
func appendBar(dst plot.Path, a, b plot.Point, width float64) plot.Path {
	d := b.Sub(a)
	if !(d.Length() > 0.1) {
		return dst.Circle(a, width/2)
	}
	side := d.Unit().Across().Times(width / 2)
	dst = dst.MoveTo(a.Add(side)).ArcTo(width/2, width/2, 0, false, true, a.Sub(side))
	return dst.LineTo(b.Sub(side)).ArcTo(width/2, width/2, 0, false, true, b.Add(side)).Close()
}

// drawHull draws the convex outline about the points of a knuckle, which has some
// width about its joints.
func (l *linkage) drawHull(points []ref) {
	var corners []plot.Point
	for _, x := range points {
		corners = append(corners, l.on(x))
	}
	l.paths[knuckleLayer] = appendRounded(l.paths[knuckleLayer], hull(corners), l.width(spindleWidth)/2)
}

// appendRounded appends the outline at a distance about a convex polygon that runs
// clockwise as seen.
func appendRounded(dst plot.Path, corners []plot.Point, off float64) plot.Path {
	n := len(corners)
	if n < 3 {
		return appendBar(dst, corners[0], corners[n-1], 2*off)
	}
	for i := range corners {
		a, b, c := corners[(i+n-1)%n], corners[i], corners[(i+1)%n]
		before := b.Sub(a).Unit().Across().Times(-off)
		after := c.Sub(b).Unit().Across().Times(-off)
		if i == 0 {
			dst = dst.MoveTo(b.Add(before))
		} else {
			dst = dst.LineTo(b.Add(before))
		}
		dst = dst.ArcTo(off, off, 0, false, true, b.Add(after))
	}
	return dst.Close()
}

// hull returns the corners of the convex outline, clockwise as seen, by the method
// of Andrew.
func hull(points []plot.Point) []plot.Point {
	sort.Slice(points, func(i, j int) bool {
		a, b := points[i], points[j]
		return a.X < b.X || a.X == b.X && a.Y < b.Y
	})
	points = slices.Compact(points)
	if len(points) < 3 {
		return points
	}
	upper := halfHull(nil, points)
	slices.Reverse(points)
	lower := halfHull(nil, points)
	return append(upper[:len(upper)-1], lower[:len(lower)-1]...)
}

func halfHull(dst, points []plot.Point) []plot.Point {
	for _, q := range points {
		for len(dst) >= 2 && !turnsClockwise(dst[len(dst)-2], dst[len(dst)-1], q) {
			dst = dst[:len(dst)-1]
		}
		dst = append(dst, q)
	}
	return dst
}

// turnsClockwise reports whether the way a, b, c turns to the right as seen.
func turnsClockwise(a, b, c plot.Point) bool { return b.Sub(a).Across().Dot(c.Sub(b)) > 0 }

// housingPart is the length of a rack's housing as part of the distance between the
// inner balls: the rest is the rack's stroke and its boots.
const housingPart = 0.7

// drawHousing draws a rack: its housing on the body, and the rack between the balls.
func (l *linkage) drawHousing() {
	if !l.rack {
		return
	}
	a, b := l.place(l.home, l.inner[solver.Left]), l.place(l.home, l.inner[solver.Right])
	middle, half := a.Add(b).Times(0.5), b.Sub(a).Times(housingPart/2)
	from, to := l.paper(middle.Sub(half)), l.paper(middle.Add(half))
	rod := appendBar(l.paths[rodLayer], l.on(l.inner[solver.Left]), l.on(l.inner[solver.Right]), l.width(rodWidth))
	l.paths[rodLayer] = rod
	l.paths[bodyLayer] = appendBar(l.paths[bodyLayer], from, to, l.width(rackWidth))
}

// wheels sets the tyres. The width of a tyre and the radius of a rim are not in the
// study: they are drawn as on a usual car.
func (l *linkage) wheels(radius float64) {
	for _, s := range solver.Sides {
		l.tyre[s] = plot.Wheel{
			Centre: l.closed(l.place(l.at, l.wheel[s])), Axis: plot.Vec(l.at.Spin[s]),
			Radius: radius, Width: tyreWidthPart * radius,
		}
	}
}

// Proportions of a usual wheel, as parts of the tyre's radius.
const (
	tyreWidthPart = 0.62
	rimPart       = 0.62
)
