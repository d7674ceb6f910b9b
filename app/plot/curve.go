package plot

import "math"

// AppendLine appends the straight lines through the values (xs[i], ys[i]), broken
// at gaps and cut at the edge of the frame. A value alone between two gaps draws
// nothing; a marker shows it.
func (f Frame) AppendLine(dst Path, xs, ys []float64) Path {
	p := pen{path: dst, area: f.Area}
	for i := range min(len(xs), len(ys)) {
		p.to(f.At(xs[i], ys[i]))
	}
	return p.path
}

// AppendMonotone appends a smooth curve through the values that rises and falls
// only where they do: between two readings it shows no bump that is not there. The
// values of the axis along must grow or fall throughout. Gaps and edges are as in
// [Frame.AppendLine].
//
// The tangents are those of M. Steffen, "A simple method for monotonic
// interpolation in one dimension", 1990 (from memory).
func (f Frame) AppendMonotone(dst Path, along Axis, xs, ys []float64) Path {
	k := knots{f, along, xs, ys}
	p := pen{path: dst, area: f.Area}
	for i := range k.len() {
		to := k.point(i)
		if secant, ok := k.secant(i - 1); ok {
			third := (secant.h) / 3
			t0, v0 := along.split(p.prev)
			t1, v1 := along.split(to)
			c := along.point(t0+third, v0+third*k.tangent(i-1))
			d := along.point(t1-third, v1-third*k.tangent(i))
			p.curve(c, d, to)
			continue
		}
		p.to(to)
	}
	return p.path
}

// knots are the points of a curve on the paper, seen along one axis.
type knots struct {
	frame  Frame
	along  Axis
	xs, ys []float64
}

func (k knots) len() int { return min(len(k.xs), len(k.ys)) }

func (k knots) point(i int) Point { return k.frame.At(k.xs[i], k.ys[i]) }

// secant is the straight line between two neighbours: its length along the axis
// and its slope.
type secant struct{ h, slope float64 }

// secant returns the line from knot i to the next; ok is false beyond the ends, at
// gaps and where the axis does not advance.
func (k knots) secant(i int) (secant, bool) {
	if i < 0 || i+1 >= k.len() {
		return secant{}, false
	}
	t0, v0 := k.along.split(k.point(i))
	t1, v1 := k.along.split(k.point(i + 1))
	s := secant{t1 - t0, (v1 - v0) / (t1 - t0)}
	return s, finite(s.slope)
}

// tangent returns the slope of the curve at knot i.
func (k knots) tangent(i int) float64 {
	before, hasBefore := k.secant(i - 1)
	after, hasAfter := k.secant(i)
	switch {
	case hasBefore && hasAfter:
		return steffen(before, after)
	case hasAfter:
		next, ok := k.secant(i + 1)
		return endTangent(after, next, ok)
	}
	previous, ok := k.secant(i - 2)
	return endTangent(before, previous, ok)
}

// steffen returns the tangent between two secants: that of the parabola, unless it
// is steeper than monotone curves allow; zero at a turning point.
func steffen(a, b secant) float64 {
	if !(a.slope*b.slope > 0) {
		return 0
	}
	parabola := (a.slope*b.h + b.slope*a.h) / (a.h + b.h)
	steepest := 2 * min(math.Abs(a.slope), math.Abs(b.slope))
	return math.Copysign(min(math.Abs(parabola), steepest), a.slope)
}

// endTangent returns the tangent at the free end of a secant.
func endTangent(end, neighbour secant, ok bool) float64 {
	if !ok {
		return end.slope
	}
	return (3*end.slope - steffen(end, neighbour)) / 2
}
