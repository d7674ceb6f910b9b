package plot

import "math"

// View is the direction of a parallel projection: the directions of the car that
// point to the right of the paper, up the paper, and out of it to the reader. They
// are of length 1, square to each other and right-handed.
type View struct{ Right, Up, Out Vec }

// The four elevations. Behind and Plan have the left wheel at the left, and a wheel
// in Plan is straight below itself in Behind.
var (
	Behind    = View{Right: Vec{Y: -1}, Up: Vec{Z: 1}, Out: Vec{X: -1}} // the driver's view of the front end
	Plan      = View{Right: Vec{Y: -1}, Up: Vec{X: 1}, Out: Vec{Z: 1}}  // from above, forward up
	LeftSide  = View{Right: Vec{X: -1}, Up: Vec{Z: 1}, Out: Vec{Y: 1}}  // from the left, forward to the left
	RightSide = View{Right: Vec{X: 1}, Up: Vec{Z: 1}, Out: Vec{Y: -1}}  // from the right, forward to the right
)

// Orbit returns the view of one who walks round the car. Yaw and pitch are in
// radians: at 0, 0 the view is [Behind]; yaw leads counter-clockwise as seen from
// above, by π/2 to [RightSide]; pitch rises, by π/2 to [Plan].
func Orbit(yaw, pitch float64) View {
	sinYaw, cosYaw := math.Sincos(yaw)
	sinPitch, cosPitch := math.Sincos(pitch)
	away := Vec{cosYaw, sinYaw, 0} // from the reader to the car, level
	return View{
		Right: Vec{sinYaw, -cosYaw, 0},
		Up:    away.Times(sinPitch).Add(Vec{Z: cosPitch}),
		Out:   away.Times(-cosPitch).Add(Vec{Z: sinPitch}),
	}
}

// Projection puts the car on the paper: Centre at Origin, Scale units of the paper
// for each mm.
type Projection struct {
	View
	Centre Vec
	Origin Point
	Scale  float64
}

// At returns the place of a point of the car.
func (p Projection) At(v Vec) Point { return p.Origin.Add(p.Step(v.Sub(p.Centre))) }

// Step returns the step on the paper of a step of the car.
func (p Projection) Step(v Vec) Point {
	return Point{v.Dot(p.Right) * p.Scale, -v.Dot(p.Up) * p.Scale}
}

// Drag returns the step of the car, in the plane of the paper, under a step of the
// pointer.
func (p Projection) Drag(step Point) Vec {
	return p.Right.Times(step.X / p.Scale).Add(p.Up.Times(-step.Y / p.Scale))
}

// Depth returns how far towards the reader a point is, in mm from Centre: what has
// less is drawn first.
func (p Projection) Depth(v Vec) float64 { return v.Sub(p.Centre).Dot(p.Out) }

// Fit returns the projection of a view that shows all points of the car in an area
// of the paper as large as it goes, in the middle. Without two places to tell apart
// the scale is 1.
func Fit(view View, area Rect, points ...Vec) Projection {
	p := Projection{View: view, Scale: 1, Origin: area.Centre()}
	var xs, ys []float64
	for _, v := range points {
		at := p.Step(v)
		xs, ys = append(xs, at.X), append(ys, at.Y)
	}
	x, _ := DomainOf(xs)
	y, _ := DomainOf(ys)
	p.Centre = p.Drag(Point{x.Low + x.Span()/2, y.Low + y.Span()/2})
	if scale := min(area.Width()/x.Span(), area.Height()/y.Span()); finite(scale) && scale > 0 {
		p.Scale = scale
	}
	return p
}
