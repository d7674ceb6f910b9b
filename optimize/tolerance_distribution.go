package optimize

import (
	"math"
	"math/rand/v2"
)

// Shape is the form of a probability distribution.
type Shape uint8

// The shapes. Uniform and Triangular lie within ± their spread; the spread of
// Normal is its standard deviation.
const (
	Normal Shape = iota
	Uniform
	Triangular
)

var shapeNames = [...]string{"normal", "uniform", "triangular"}

// String returns "normal", "uniform" or "triangular".
func (s Shape) String() string { return shapeNames[s] }

// Distribution is the distribution, about zero, of what a dimension is off by.
type Distribution struct {
	Shape  Shape
	Spread float64 // >= 0: standard deviation, or half width
}

// SD returns the standard deviation: the spread itself, or divided by √3 or √6
// (JCGM 100:2008, 4.3.7 and 4.3.9; clause numbers from memory).
func (d Distribution) SD() float64 {
	switch d.Shape {
	case Uniform:
		return d.Spread / math.Sqrt(3)
	case Triangular:
		return d.Spread / math.Sqrt(6)
	}
	return d.Spread
}

// Draw returns a value at random.
func (d Distribution) Draw(r *rand.Rand) float64 {
	switch d.Shape {
	case Uniform:
		return d.Spread * (2*r.Float64() - 1)
	case Triangular:
		return d.Spread * (r.Float64() - r.Float64())
	}
	return d.Spread * r.NormFloat64()
}
