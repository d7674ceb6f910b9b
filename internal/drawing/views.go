package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// Car axes of ISO 8855.
var forward, upward = r3.Vec{X: 1}, r3.Vec{Z: 1}

// levelStud is the cosine beyond which a stud lies so nearly along the face's normal that
// nothing of the face tells up on a view along it.
const levelStud = 0.9

// views returns the three views, all at 1:1: square to the face, along the face from the
// side with the bolts upright, and along the stud. Of a part without a face they look along
// the axes of the car and along the stud.
func (p *part) views() [3]view {
	normal, bolts, from := r3.Scale(-1, forward), upward, p.was
	names := [3]string{"FROM BEHIND", "FROM THE SIDE", "ALONG THE STUD"}
	if f := p.face; f != nil {
		normal, bolts, from = f.normal, f.along, f.point
		names = [3]string{"SQUARE TO FACE A", "ALONG FACE A", "ALONG THE STUD"}
	}
	away := r3.Scale(-1, normal)
	if math.Abs(r3.Dot(p.stud, normal)) > levelStud {
		away = bolts
	}
	front := looking(names[0], r3.Scale(-1, normal), bolts, from)
	return [3]view{
		front,
		looking(names[1], r3.Scale(-1, front.right), bolts, from),
		looking(names[2], r3.Scale(-1, p.stud), away, from),
	}
}

// viewGap is the room between views, mm, for their sizes.
const viewGap = 70.0

// arrange places the views by third-angle projection: what is seen from the right stands at
// the right, what is seen from above stands above.
func (p *part) arrange(v *[3]view) {
	var lo, hi [3]dxf.Point
	for i := range v {
		var ends []dxf.Entity
		for _, at := range p.places() {
			ends = append(ends, dxf.Mark{At: v[i].place(at)})
		}
		lo[i], hi[i] = dxf.Extent(ends)
	}
	v[1].at = dxf.Point{X: hi[0].X + viewGap - lo[1].X}
	v[2].at = dxf.Point{Y: hi[0].Y + viewGap - lo[2].Y}
}

// places lists the points of the part that every view shows.
func (p *part) places() []r3.Vec {
	list := []r3.Vec{p.hole, p.was, p.clamped, p.farEnd()}
	if p.face != nil {
		list = append(append(list, p.face.point), p.face.bolts...)
	}
	return list
}
