package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// view is one way to look at the part: what points right and up on the paper, and where the
// origin of the drawing lies in the car and on the paper.
type view struct {
	name      string
	right, up r3.Vec
	from      r3.Vec
	at        dxf.Point
}

// looking returns the view along a direction, with another as nearly upward as it goes.
func looking(name string, along, up, from r3.Vec) view {
	up = r3.Unit(r3.Sub(up, r3.Scale(r3.Dot(up, along), along)))
	return view{name: name, right: r3.Cross(along, up), up: up, from: from}
}

// out returns the direction towards the viewer.
func (v *view) out() r3.Vec { return r3.Cross(v.right, v.up) }

// place returns where a point of the car lies on the paper.
func (v *view) place(p r3.Vec) dxf.Point {
	d := r3.Sub(p, v.from)
	return dxf.Point{X: v.at.X + r3.Dot(v.right, d), Y: v.at.Y + r3.Dot(v.up, d)}
}

// along returns a direction as it lies on the paper.
func (v *view) along(d r3.Vec) (x, y float64) { return r3.Dot(v.right, d), r3.Dot(v.up, d) }

// trueView is how nearly along the view an axis must lie, or square to it, for its circle to
// be drawn round, or as a line: the sine of less than a thousandth of a degree.
const trueView = 1e-5

// ellipseSides is the number of sides of a circle that is seen askew.
const ellipseSides = 72

// circle returns a circle about an axis as it is seen: round, askew, or from its edge.
func (v *view) circle(layer string, centre, axis r3.Vec, radius float64) dxf.Entity {
	c := v.place(centre)
	toward := r3.Dot(v.out(), axis)
	x, y := v.along(axis)
	across := math.Hypot(x, y)
	switch {
	case across < trueView:
		return dxf.Circle{Layer: layer, Centre: c, Radius: radius}
	case math.Abs(toward) < trueView:
		dx, dy := -y/across*radius, x/across*radius
		return dxf.Line{Layer: layer, From: dxf.Point{X: c.X - dx, Y: c.Y - dy}, To: dxf.Point{X: c.X + dx, Y: c.Y + dy}}
	}
	out := dxf.Polyline{Layer: layer, Closed: true}
	for i := range ellipseSides {
		s, k := math.Sincos(2 * math.Pi * float64(i) / ellipseSides)
		a, b := -y/across, x/across // along the long axis
		out.Points = append(out.Points, dxf.Point{
			X: c.X + radius*(k*a+s*toward*x/across), Y: c.Y + radius*(k*b+s*toward*y/across),
		})
	}
	return out
}
