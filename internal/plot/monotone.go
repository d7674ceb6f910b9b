package plot

import "math"

// AppendMonotone appends a smooth curve through the values that rises and falls
// only where they do: between two readings it shows no bump that is not there. The
// values of the axis along must grow or fall throughout. Gaps and edges are as in
// [Frame.AppendLine], which looks the same, and costs a quarter, where the values lie
// no more than some pixels apart.
//
// The tangents are those of M. Steffen, "A simple method for monotonic
// interpolation in one dimension", 1990 (from memory).
func (f Frame) AppendMonotone(dst Path, along Axis, xs, ys []float64) Path {
	k := knots{f, along, xs, ys}
	p := pen{path: dst, area: f.Area}
	before := 0.0 // tangent at the knot before
	for i := range k.len() {
		tangent := k.tangent(i)
		if secant, ok := k.secant(i - 1); ok {
			p.hermite(along, secant.h/3, before, tangent, k.point(i))
		} else {
			p.to(k.point(i))
		}
		before = tangent
	}
	return p.path
}

// hermite draws the cubic to q with the tangents a at prev and b at q; third is a
// third of the way along the axis.
func (p *pen) hermite(along Axis, third, a, b float64, q Point) {
	t0, v0 := along.split(p.prev)
	t1, v1 := along.split(q)
	p.curve(along.point(t0+third, v0+third*a), along.point(t1-third, v1-third*b), q)
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
