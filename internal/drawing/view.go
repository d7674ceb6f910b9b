package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// view is one way to look at the part: what points right and up on the paper, the point of
// the car that stands at a place of the paper, and the scale.
type view struct {
	name      string
	right, up r3.Vec
	from      r3.Vec
	at        dxf.Point
	scale     float64
}

// out returns the direction towards the viewer.
func (v *view) out() r3.Vec { return r3.Cross(v.right, v.up) }

// place returns where a point of the car lies on the paper.
func (v *view) place(p r3.Vec) dxf.Point {
	x, y := v.along(r3.Sub(p, v.from))
	return dxf.Point{X: v.at.X + v.scale*x, Y: v.at.Y + v.scale*y}
}

// along returns a direction as it lies on the paper, of its length in the car.
func (v *view) along(d r3.Vec) (x, y float64) { return r3.Dot(v.right, d), r3.Dot(v.up, d) }

// trueView is how nearly along the view an axis must lie, or square to it, for its circle to
// be drawn round, or as a line: the sine of less than a thousandth of a degree.
const trueView = 1e-5

// ellipseSides is the number of sides of a circle that is seen askew.
const ellipseSides = 72

// circle returns a circle about an axis as it is seen: round, askew, or from its edge.
func (v *view) circle(layer string, lines dxf.LineType, centre, axis r3.Vec, radius float64) dxf.Entity {
	c := v.place(centre)
	radius *= v.scale
	toward := r3.Dot(v.out(), axis)
	x, y := v.along(axis)
	across := math.Hypot(x, y)
	switch {
	case across < trueView:
		return dxf.Circle{Layer: layer, Centre: c, Radius: radius, Lines: lines}
	case abs(toward) < trueView:
		dx, dy := -y/across*radius, x/across*radius
		return dxf.Line{Layer: layer, From: dxf.Point{X: c.X - dx, Y: c.Y - dy}, To: dxf.Point{X: c.X + dx, Y: c.Y + dy}, Lines: lines}
	}
	out := dxf.Polyline{Layer: layer, Closed: true, Lines: lines}
	for i := range ellipseSides {
		s, k := math.Sincos(2 * math.Pi * float64(i) / ellipseSides)
		a, b := -y/across, x/across // along the long axis
		out.Points = append(out.Points, dxf.Point{
			X: c.X + radius*(k*a+s*toward*x/across), Y: c.Y + radius*(k*b+s*toward*y/across),
		})
	}
	return out
}
