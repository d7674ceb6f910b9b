package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Vec is a point or a direction in vehicle axes: x forward, y left, z up, in mm.
type Vec = r3.Vec

// up is the vertical of the vehicle frame.
var up = Vec{Z: 1}

// finite reports whether no component of v is NaN or infinite.
func finite(v Vec) bool {
	s := v.X + v.Y + v.Z
	return !math.IsNaN(s) && !math.IsInf(s, 0)
}

// horizontal returns the unit vector along the level part of v, and the length
// of that part. It returns zeros for a vertical v.
func horizontal(v Vec) (Vec, float64) {
	n := math.Hypot(v.X, v.Y)
	if !(n > 0) {
		return Vec{}, 0
	}
	return Vec{X: v.X / n, Y: v.Y / n}, n
}

// along returns the unit vector of coordinate i: 0 for x, 1 for y, 2 for z.
func along(i int) Vec {
	switch i {
	case 0:
		return Vec{X: 1}
	case 1:
		return Vec{Y: 1}
	}
	return Vec{Z: 1}
}

// sub returns a - b.
func sub(a, b Vec) Vec { return r3.Sub(a, b) }

// norm returns the length of v. Unlike that of r3 it does not guard against
// overflow, which no place of a car comes near.
func norm(v Vec) float64 { return math.Sqrt(dot(v, v)) }

// dot returns the scalar product.
func dot(a, b Vec) float64 { return r3.Dot(a, b) }

// nan marks a derivative that does not exist.
var nan = math.NaN()
