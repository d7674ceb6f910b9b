package drawing

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// The layers.
const (
	outline   = "OUTLINE"
	centre    = "CENTRE"
	original  = "ORIGINAL"
	dimension = "DIMENSION"
	words     = "TEXT"
)

// layers are those of every drawing; line types are by ISO 128-2's habits: full for edges,
// chain for axes, dashed for what was.
var layers = []dxf.Layer{
	{Name: outline, Colour: 7, Lines: dxf.Continuous},
	{Name: centre, Colour: 1, Lines: dxf.Chain},
	{Name: original, Colour: 3, Lines: dxf.Dashed},
	{Name: dimension, Colour: 5, Lines: dxf.Continuous},
	{Name: words, Colour: 7, Lines: dxf.Continuous},
}

// Sizes on the paper, mm.
const (
	letterHeight = 3.0
	crossReach   = 3.0 // arm of the cross on an axis that is seen end on
	edgeReach    = 12.0
)

// drawing returns the part at 1:1.
func (p *part) drawing() *dxf.Drawing {
	return &dxf.Drawing{Remark: "mm, 1:1. " + p.title, Layers: layers, Entities: p.entities()}
}

// pen draws a part in one view.
type pen struct {
	*part
	view
	out []dxf.Entity
}

func (p *part) entities() []dxf.Entity {
	views := p.views()
	p.arrange(&views)
	var all []dxf.Entity
	for i := range views {
		k := &pen{part: p, view: views[i]}
		k.shape()
		k.sizes(i)
		all = append(all, k.out...)
	}
	return append(all, p.notes(all)...)
}

func (k *pen) add(e ...dxf.Entity) { k.out = append(k.out, e...) }

func (k *pen) line(layer string, a, b r3.Vec) {
	k.add(dxf.Line{Layer: layer, From: k.place(a), To: k.place(b)})
}

// axis draws an axis through a point of the car, from some mm before it to some after it; a
// cross where it is seen end on.
func (k *pen) axis(layer string, at, along r3.Vec, from, to float64) {
	if x, y := k.along(along); math.Hypot(x, y) > trueView {
		k.line(layer, r3.Add(at, r3.Scale(from, along)), r3.Add(at, r3.Scale(to, along)))
		return
	}
	k.cross(layer, at)
}

func (k *pen) cross(layer string, at r3.Vec) {
	c := k.place(at)
	k.add(
		dxf.Line{Layer: layer, From: dxf.Point{X: c.X - crossReach, Y: c.Y}, To: dxf.Point{X: c.X + crossReach, Y: c.Y}},
		dxf.Line{Layer: layer, From: dxf.Point{X: c.X, Y: c.Y - crossReach}, To: dxf.Point{X: c.X, Y: c.Y + crossReach}},
	)
}

// shape draws what the part is, and where its hole was.
func (k *pen) shape() {
	k.add(dxf.Mark{Layer: centre, At: k.place(k.hole)}, dxf.Mark{Layer: original, At: k.place(k.was)})
	k.eye(outline, r3.Vec{})
	k.eye(original, r3.Sub(k.was, k.hole))
	k.axis(centre, k.hole, k.stud, -r3.Norm(r3.Sub(k.farEnd(), k.hole))-edgeReach/2, edgeReach/2)
	k.cross(original, k.was)
	k.bolted()
}

// eye draws the hole for the stud with both ends of its taper, moved by a distance.
func (k *pen) eye(layer string, by r3.Vec) {
	near, far := r3.Add(k.clamped, by), r3.Add(k.farEnd(), by)
	if k.large > 0 {
		k.add(k.circle(layer, near, k.stud, k.large/2))
	}
	if k.small == 0 {
		return
	}
	k.add(k.circle(layer, far, k.stud, k.small/2))
	x, y := k.along(k.stud)
	n := math.Hypot(x, y)
	if n < trueView {
		return
	}
	for _, side := range []float64{-1, 1} {
		dx, dy := -side*y/n/2, side*x/n/2
		a, b := k.place(near), k.place(far)
		k.add(dxf.Line{Layer: layer, From: dxf.Point{X: a.X + dx*k.large, Y: a.Y + dy*k.large}, To: dxf.Point{X: b.X + dx*k.small, Y: b.Y + dy*k.small}})
	}
}

// bolted draws the face from its edge, and the bolts.
func (k *pen) bolted() {
	f := k.face
	if f == nil {
		return
	}
	x, y := k.along(f.normal)
	if n := math.Hypot(x, y); n > 1-trueView {
		along := r3.Add(r3.Scale(-y/n, k.right), r3.Scale(x/n, k.up))
		lo, hi := 0.0, 0.0
		for _, b := range f.bolts {
			at := r3.Dot(along, r3.Sub(b, f.point))
			lo, hi = min(lo, at), max(hi, at)
		}
		k.line(outline, r3.Add(f.point, r3.Scale(lo-edgeReach, along)), r3.Add(f.point, r3.Scale(hi+edgeReach, along)))
	}
	for _, b := range f.bolts {
		k.add(dxf.Mark{Layer: centre, At: k.place(b)})
		k.axis(centre, b, f.normal, -edgeReach, edgeReach)
		if k.bolt > 0 {
			k.add(k.circle(outline, b, f.normal, k.bolt/2))
		}
	}
}

// heading writes what the view shows.
func (k *pen) heading(at dxf.Point) {
	k.add(dxf.Text{Layer: words, At: at, Height: letterHeight, Value: k.name})
}

// diameter writes a diameter.
func (p *part) diameter(mm float64) string { return "Ø" + p.length(mm) }

// length writes a length as the bench sheet does, with its decimals alone.
func (p *part) length(mm float64) string { return p.style.LengthDecimal(mm) }

// holeWords says what the hole is like, "" where the study does not.
func (p *part) holeWords() string {
	switch {
	case p.large == 0:
		return ""
	case p.small == 0:
		return p.diameter(p.large) + " at the face that clamps the stud"
	case p.small == p.large:
		return fmt.Sprintf("%s through %s", p.diameter(p.large), p.length(p.thickness))
	}
	return fmt.Sprintf("%s at the face that clamps the stud, taper %g of diameter by length, %s at the other, through %s",
		p.diameter(p.large), p.study.Arm.Hole.Taper, p.diameter(p.small), p.length(p.thickness))
}
