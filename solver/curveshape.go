package solver

import "math"

// CurveShape splits a toe error along the travel into a slope through static
// height, a curvature, and what neither explains: the S-shape of pivots out of
// plane. The parts are square to one another over the positions, so that their
// shares of the mean square add up to 1.
type CurveShape struct {
	RMS                         Angle // of the whole error
	Slope, Curvature, Remainder ShapePart
}

// ShapePart is a part of a toe error.
type ShapePart struct {
	RMS   Angle
	Share float64 // of the mean square error, 0 to 1
}

// NewCurveShape splits the errors e, in radians, at the travels z, in mm. The slope
// is taken first: over a window that is lopsided about static height a curvature has
// some slope in it, which counts as slope.
func NewCurveShape(z, e []float64) CurveShape {
	line := make([]float64, len(z))
	bow := make([]float64, len(z))
	for i := range z {
		line[i], bow[i] = z[i], z[i]*z[i]
	}
	removed := multiple(bow, line)
	for i := range bow {
		bow[i] -= removed * line[i]
	}
	total := meanSquare(e)
	slope, curvature := explained(e, line), explained(e, bow)
	rest := math.Max(0, total-slope-curvature)
	return CurveShape{
		RMS:       Angle(math.Sqrt(total)),
		Slope:     newShapePart(slope, total),
		Curvature: newShapePart(curvature, total),
		Remainder: newShapePart(rest, total),
	}
}

func newShapePart(square, total float64) ShapePart {
	p := ShapePart{RMS: Angle(math.Sqrt(square))}
	if total > 0 {
		p.Share = square / total
	}
	return p
}

// multiple returns how much of b is in a: a·b/b², 0 for no b.
func multiple(a, b []float64) float64 {
	var ab, bb float64
	for i := range a {
		ab, bb = ab+a[i]*b[i], bb+b[i]*b[i]
	}
	if !(bb > 0) {
		return 0
	}
	return ab / bb
}

// explained returns the mean square of the part of e along b.
func explained(e, b []float64) float64 {
	k := multiple(e, b)
	return k * k * meanSquare(b)
}

func meanSquare(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return sum / float64(len(v))
}
