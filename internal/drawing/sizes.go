package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
	"toewright/internal/number"
)

// Places of sizes about a view, mm.
const (
	sizeGap   = 14.0 // of a dimension line from the view
	sizeStep  = 12.0 // to the next
	arrowLong = 3.0
	arrowHalf = 0.5
	extension = 1.5 // of an extension line beyond the dimension line
)

// sizes draws the basic sizes of view number i, each once: square to the face all that lies
// in it, along it the distances from it and along its bolts.
func (k *pen) sizes(i int) {
	lo, hi := k.extent()
	k.heading(dxf.Point{X: lo.X, Y: hi.Y + sizeGap/2})
	from, base := k.was, k.was
	if k.face != nil {
		from, base = k.face.origin(), k.face.point
	}
	switch i {
	case 0:
		k.across(from, k.hole, k.was, lo.Y-sizeGap)
		if k.face != nil && len(k.face.bolts) > 1 {
			k.upright(from, k.face.bolts[1], k.face.bolts[1], lo.X-sizeGap)
			k.letter("B", dxf.Point{X: lo.X - sizeGap - sizeStep, Y: k.place(from).Y})
		}
	case 1:
		k.across(base, k.hole, k.was, lo.Y-sizeGap)
		k.upright(from, k.hole, k.was, hi.X+sizeGap)
		if k.face != nil {
			k.letter("A", dxf.Point{X: k.place(base).X, Y: hi.Y + sizeGap})
		}
	}
}

// extent returns the corners of what is drawn in the view so far.
func (k *pen) extent() (lo, hi dxf.Point) { return dxf.Extent(k.out) }

// across draws the distance from one point to another to the right, at a height on the
// paper, with its change from where the point was.
func (k *pen) across(from, to, was r3.Vec, y float64) {
	a, b := k.place(from), k.place(to)
	k.size(a, b, dxf.Point{X: a.X, Y: y}, dxf.Point{X: b.X, Y: y}, b.X-a.X, k.place(was).X-a.X)
}

// upright draws the distance upward, at a place across the paper.
func (k *pen) upright(from, to, was r3.Vec, x float64) {
	a, b := k.place(from), k.place(to)
	k.size(a, b, dxf.Point{X: x, Y: a.Y}, dxf.Point{X: x, Y: b.Y}, b.Y-a.Y, k.place(was).Y-a.Y)
}

// size draws a dimension line from p to q, which measures the points a and b, and the basic
// size in its frame. A size that is written as zero is left out.
func (k *pen) size(a, b, p, q dxf.Point, now, was float64) {
	text := k.length(math.Abs(now))
	if text == k.length(0) && k.length(now-was) == k.length(0) {
		return
	}
	k.add(beyond(a, p), beyond(b, q), dxf.Line{Layer: dimension, From: p, To: q})
	k.add(arrow(q, p)...)
	k.add(arrow(p, q)...)
	mid := dxf.Point{X: (p.X+q.X)/2 + 1, Y: (p.Y+q.Y)/2 + 1}
	right := k.framed(mid, text)
	if change := k.length((now - was) * sign(now)); change != k.length(0) {
		k.add(dxf.Text{Layer: dimension, At: dxf.Point{X: right + 1, Y: mid.Y + letterHeight/2}, Height: letterHeight,
			Value: "(" + number.Plain(number.Signed((now-was)*sign(now), change)) + ")"})
	}
}

func sign(x float64) float64 { return math.Copysign(1, x) }

// beyond is the extension line from what is measured to just past a dimension line.
func beyond(from, to dxf.Point) dxf.Line {
	dx, dy := to.X-from.X, to.Y-from.Y
	if n := math.Hypot(dx, dy); n > 0 {
		to = dxf.Point{X: to.X + dx/n*extension, Y: to.Y + dy/n*extension}
	}
	return dxf.Line{Layer: dimension, From: from, To: to}
}

// arrow is the head of an arrow at the end of a line.
func arrow(from, to dxf.Point) []dxf.Entity {
	dx, dy := from.X-to.X, from.Y-to.Y
	n := math.Hypot(dx, dy)
	if n == 0 {
		return nil
	}
	dx, dy = dx/n, dy/n
	back := dxf.Point{X: to.X + dx*arrowLong, Y: to.Y + dy*arrowLong}
	return []dxf.Entity{
		dxf.Line{Layer: dimension, From: to, To: dxf.Point{X: back.X - dy*arrowHalf, Y: back.Y + dx*arrowHalf}},
		dxf.Line{Layer: dimension, From: to, To: dxf.Point{X: back.X + dy*arrowHalf, Y: back.Y - dx*arrowHalf}},
	}
}

// framed writes a text in a frame, as a basic size stands, and returns its right edge.
func (k *pen) framed(at dxf.Point, text string) (right float64) {
	e, right := framed(dimension, at, text)
	k.add(e...)
	return right
}

// framed returns a text in a frame, with its lower left corner at a place, and its right
// edge.
func framed(layer string, at dxf.Point, text string) (out []dxf.Entity, right float64) {
	label := dxf.Text{Layer: layer, At: dxf.Point{X: at.X + letterHeight/2, Y: at.Y + letterHeight/2}, Height: letterHeight, Value: text}
	_, hi := dxf.Extent([]dxf.Entity{label})
	right = hi.X + letterHeight/2
	top := at.Y + 2*letterHeight
	corners := []dxf.Point{at, {X: right, Y: at.Y}, {X: right, Y: top}, {X: at.X, Y: top}}
	return []dxf.Entity{dxf.Polyline{Layer: layer, Points: corners, Closed: true}, label}, right
}

// letter marks a datum.
func (k *pen) letter(name string, at dxf.Point) { k.framed(at, name) }
