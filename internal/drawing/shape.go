package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// Sizes of what the study does not state, which is drawn by lines with two dots, mm.
const (
	usualHole = 16.0 // diameter
	usualEye  = 20.0 // thickness
	padEdge   = 10.0 // from a bolt to the edge of the face
	padThick  = 12.0
	axisReach = 25.0 // of an axis to either side, or beyond the part
	axisShown = 35.0 // of the steering axis to either side of the ball's height
)

// crossReach is the arm of the cross on an axis that is seen end on, on the paper.
const crossReach = 3.0

// sheetView draws the part in one view.
type sheetView struct {
	*pen
	*part
	view
}

func (k *sheetView) segment(layer string, lines dxf.LineType, a, b r3.Vec) {
	k.add(dxf.Line{Layer: layer, From: k.place(a), To: k.place(b), Lines: lines})
}

// axisLine draws an axis through a point of the car, from some mm before it to some after it;
// a cross where it is seen end on.
func (k *sheetView) axisLine(layer string, at, along r3.Vec, from, to float64) {
	if x, y := k.along(along); math.Hypot(x, y) > trueView {
		k.segment(layer, "", r3.Add(at, r3.Scale(from, along)), r3.Add(at, r3.Scale(to, along)))
		return
	}
	k.cross(layer, at)
}

func (k *sheetView) cross(layer string, at r3.Vec) {
	c := k.place(at)
	k.line(layer, c.X-crossReach, c.Y, c.X+crossReach, c.Y)
	k.line(layer, c.X, c.Y-crossReach, c.X, c.Y+crossReach)
}

// barrel draws what turns about an axis: both its ends and the edges between.
func (k *sheetView) barrel(layer string, lines dxf.LineType, near, far, axis r3.Vec, nearRadius, farRadius float64) {
	k.add(k.circle(layer, lines, near, axis, nearRadius), k.circle(layer, lines, far, axis, farRadius))
	x, y := k.along(axis)
	n := math.Hypot(x, y)
	if n < trueView {
		return
	}
	a, b := k.place(near), k.place(far)
	for _, side := range []float64{-k.scale, k.scale} {
		dx, dy := -side*y/n, side*x/n
		k.add(dxf.Line{Layer: layer, Lines: lines,
			From: dxf.Point{X: a.X + dx*nearRadius, Y: a.Y + dy*nearRadius}, To: dxf.Point{X: b.X + dx*farRadius, Y: b.Y + dy*farRadius}})
	}
}

// draw draws what the part is, where its hole was, and by lines with two dots which way the
// form between may run.
func (k *sheetView) draw() {
	k.form()
	k.add(dxf.Mark{Layer: centre, At: k.place(k.hole)}, dxf.Mark{Layer: original, At: k.place(k.was)})
	k.eye(outline, r3.Vec{})
	if r3.Norm(r3.Sub(k.was, k.hole)) > 0 {
		k.eye(original, r3.Sub(k.was, k.hole))
	}
	k.cross(original, k.was)
	k.cross(centre, k.hole)
	k.axisLine(centre, k.hole, k.stud, -r3.Norm(r3.Sub(k.eyeFar(), k.hole))-padEdge/2, padEdge)
	if k.face == nil {
		k.axisLine(centre, k.foot, k.axis, -axisShown, axisShown)
		return
	}
	k.bolted()
}

// eye draws the hole for the stud with both ends of its taper, moved by a distance.
func (k *sheetView) eye(layer string, by r3.Vec) {
	switch {
	case k.large == 0 && layer == original && k.face == nil:
		k.add(k.circle(layer, "", r3.Add(k.hole, by), k.stud, k.wasRadius()))
	case k.large > 0 && k.small == 0:
		k.add(k.circle(layer, "", r3.Add(k.clamped, by), k.stud, k.large/2))
	case k.large > 0:
		k.barrel(layer, "", r3.Add(k.clamped, by), r3.Add(k.farEnd(), by), k.stud, k.large/2, k.small/2)
	}
}

// eyeFar is the far end of the eye, of a usual thickness where none is stated.
func (p *part) eyeFar() r3.Vec {
	if p.thickness > 0 {
		return p.farEnd()
	}
	return r3.Sub(p.clamped, r3.Scale(usualEye, p.stud))
}

// boss is the radius of the eye as it is drawn.
func (p *part) boss() float64 {
	if p.large > 0 {
		return p.large
	}
	return usualHole
}

// form draws the eye, the foot at the face and what may be between.
func (k *sheetView) form() {
	r := k.boss()
	k.barrel(centre, dxf.Phantom, k.clamped, k.eyeFar(), k.stud, r, r)
	root, half := k.pad()
	a, b := k.place(root), k.place(r3.Scale(0.5, r3.Add(k.clamped, k.eyeFar())))
	dx, dy := b.X-a.X, b.Y-a.Y
	n := math.Hypot(dx, dy)
	r *= k.scale
	if n < neckSeen*k.scale*r3.Norm(r3.Sub(k.clamped, root)) {
		return // seen along the arm
	}
	dx, dy = dx/n, dy/n
	const neck = 0.45 // half the width at the eye, by the eye's radius
	end := r
	if abs(r3.Dot(k.out(), k.stud)) > steep {
		end *= math.Sqrt(1 - neck*neck) // round
	}
	for _, s := range []float64{-1, 1} {
		k.add(dxf.Line{Layer: centre, Lines: dxf.Phantom,
			From: dxf.Point{X: a.X - s*dy*half, Y: a.Y + s*dx*half},
			To:   dxf.Point{X: b.X - dx*end - s*dy*neck*r, Y: b.Y - dy*end + s*dx*neck*r}})
	}
}

// neckSeen is the share of its length below which the arm is not drawn from its end.
const neckSeen = 0.6

// steep is the cosine beyond which a direction counts as along the view.
const steep = 0.7

// pad draws the foot of the arm on its face, and returns where the arm leaves it with half
// of its width on the paper.
func (k *sheetView) pad() (root r3.Vec, half float64) {
	if k.face == nil {
		return k.foot, 0.6 * k.boss() * k.scale
	}
	f := k.face
	e := [2]r3.Vec{k.sizes[1].along, k.sizes[2].along}
	var lo, hi [2]float64
	for i := range e {
		for _, b := range f.bolts {
			at := r3.Dot(e[i], r3.Sub(b, f.point))
			lo[i], hi[i] = min(lo[i], at), max(hi[i], at)
		}
		lo[i], hi[i] = lo[i]-padEdge, hi[i]+padEdge
	}
	corner := func(u, v, w float64) r3.Vec {
		return r3.Add(r3.Add(f.point, r3.Scale(u, e[0])), r3.Add(r3.Scale(v, e[1]), r3.Scale(w, f.normal)))
	}
	edge := func(a, b r3.Vec, onFace bool) {
		if p, q := k.place(a), k.place(b); math.Hypot(p.X-q.X, p.Y-q.Y) < 1e-9 {
			return
		}
		if onFace && abs(r3.Dot(f.normal, k.out())) < trueView {
			return // drawn full, as the face
		}
		k.segment(centre, dxf.Phantom, a, b)
	}
	us, vs := [2]float64{lo[0], hi[0]}, [2]float64{lo[1], hi[1]}
	square := abs(r3.Dot(f.normal, k.out())) > 1-trueView
	for _, w := range []float64{0, padThick} {
		if square && w > 0 {
			continue // one behind the other
		}
		for i := range 2 {
			edge(corner(us[0], vs[i], w), corner(us[1], vs[i], w), w == 0)
			edge(corner(us[i], vs[0], w), corner(us[i], vs[1], w), w == 0)
		}
	}
	if !square {
		edge(corner(us[0], vs[0], 0), corner(us[0], vs[0], padThick), false)
		edge(corner(us[1], vs[1], 0), corner(us[1], vs[1], padThick), false)
	}
	// The width of the pad as it is seen.
	a, b := k.place(corner(us[0], vs[0], padThick)), k.place(corner(us[1], vs[1], padThick))
	half = 0.3 * math.Hypot(a.X-b.X, a.Y-b.Y)
	return corner((us[0]+us[1])/2, (vs[0]+vs[1])/2, padThick), half
}

// bolted draws the face from its edge, and the bolts.
func (k *sheetView) bolted() {
	f := k.face
	if x, y := k.along(f.normal); math.Hypot(x, y) > 1-trueView {
		n := math.Hypot(x, y)
		along := r3.Add(r3.Scale(-y/n, k.right), r3.Scale(x/n, k.up))
		lo, hi := 0.0, 0.0
		for _, b := range f.bolts {
			at := r3.Dot(along, r3.Sub(b, f.point))
			lo, hi = min(lo, at), max(hi, at)
		}
		k.segment(outline, "", r3.Add(f.point, r3.Scale(lo-padEdge, along)), r3.Add(f.point, r3.Scale(hi+padEdge, along)))
	}
	for _, b := range f.bolts {
		b = r3.Sub(b, r3.Scale(r3.Dot(f.normal, r3.Sub(b, f.point)), f.normal)) // into the face
		k.add(dxf.Mark{Layer: centre, At: k.place(b)})
		k.axisLine(centre, b, f.normal, -padEdge/2, padThick+padEdge/2)
		if k.bolt > 0 {
			k.boltHole(b)
		}
	}
}

// boltHole draws a bolt's hole in the face: round, or where that is seen from its edge, by its
// hidden edges.
func (k *sheetView) boltHole(at r3.Vec) {
	x, y := k.along(k.face.normal)
	n := math.Hypot(x, y)
	if n < 1-trueView {
		k.add(k.circle(outline, "", at, k.face.normal, k.part.bolt/2))
		return
	}
	side := r3.Add(r3.Scale(-y/n*k.part.bolt/2, k.right), r3.Scale(x/n*k.part.bolt/2, k.view.up))
	for _, s := range []float64{-1, 1} {
		edge := r3.Add(at, r3.Scale(s, side))
		k.segment(outline, dxf.Dashed, edge, r3.Add(edge, r3.Scale(padThick, k.face.normal)))
	}
}
