package plot

import "math"

// Vec is a place or a direction in vehicle axes: x forward, y left, z up, in mm.
type Vec struct{ X, Y, Z float64 }

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub returns v - w, the step from w to v.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Times returns v scaled by f.
func (v Vec) Times(f float64) Vec { return Vec{v.X * f, v.Y * f, v.Z * f} }

// Dot returns the scalar product.
func (v Vec) Dot(w Vec) float64 { return v.X*w.X + v.Y*w.Y + v.Z*w.Z }

// Cross returns the vector product.
func (v Vec) Cross(w Vec) Vec {
	return Vec{v.Y*w.Z - v.Z*w.Y, v.Z*w.X - v.X*w.Z, v.X*w.Y - v.Y*w.X}
}

// Length returns the distance from the origin.
func (v Vec) Length() float64 { return math.Sqrt(v.Dot(v)) }
