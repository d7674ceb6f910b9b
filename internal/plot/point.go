package plot

import "math"

// Point is a place or a step on the paper: x right, y down, in SVG user units.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q, the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns p scaled by f.
func (p Point) Times(f float64) Point { return Point{p.X * f, p.Y * f} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Length returns the distance from the origin.
func (p Point) Length() float64 { return math.Hypot(p.X, p.Y) }

// Towards returns the point at the fraction t of the way from p to q, and exactly
// p and q at 0 and 1.
func (p Point) Towards(q Point, t float64) Point {
	return Point{mix(p.X, q.X, t), mix(p.Y, q.Y, t)}
}

// Unit returns p with length 1; the zero step gives the step to the right, so that
// a drawing of a rod without length stays a drawing.
func (p Point) Unit() Point {
	l := p.Length()
	if !(l > 0) {
		return Point{1, 0}
	}
	return p.Times(1 / l)
}

// Across returns p turned a quarter turn clockwise as seen: right becomes down.
func (p Point) Across() Point { return Point{-p.Y, p.X} }

// Angle returns the direction of p in degrees, clockwise from the right.
func (p Point) Angle() float64 { return math.Atan2(p.Y, p.X) * 180 / math.Pi }

// finite reports whether both coordinates are numbers.
func (p Point) finite() bool { return finite(p.X) && finite(p.Y) }

// finite reports whether v is neither NaN nor infinite.
func finite(v float64) bool { return v-v == 0 }

// mix returns the value at the fraction t from a to b, exactly a and b at 0 and 1.
func mix(a, b, t float64) float64 { return a*(1-t) + b*t }
