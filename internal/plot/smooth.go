package plot

import "math"

// AppendSmooth appends a smooth curve through values that may go anywhere, as the
// path of an instant centre does: a Catmull-Rom spline with centripetal parameters,
// which has neither loops nor cusps between its points. Gaps and edges are as in
// [Frame.AppendLine].
func (f Frame) AppendSmooth(dst Path, xs, ys []float64) Path {
	p := pen{path: dst, area: f.Area}
	k := knots{frame: f, xs: xs, ys: ys}
	for i := range k.len() {
		b := k.point(i)
		if !p.down || !b.finite() || b == p.prev {
			p.to(b)
			continue
		}
		a := p.prev
		p.curve(handle(k.near(i-2, a), a, b), handle(k.near(i+1, b), b, a), b)
	}
	return p.path
}

// near returns point i, or instead where there is none.
func (k knots) near(i int, instead Point) Point {
	if i < 0 || i >= k.len() || !k.point(i).finite() {
		return instead
	}
	return k.point(i)
}

// handle returns the control point at b of the Bézier curve from b to c, where a
// is the point before b.
func handle(a, b, c Point) Point {
	before, after := math.Sqrt(b.Sub(a).Length()), math.Sqrt(c.Sub(b).Length())
	if before == 0 {
		return b.Towards(c, 1.0/3)
	}
	// The tangent at b of the non-uniform spline, times the length of the span.
	tangent := b.Sub(a).Times(after / before).
		Sub(c.Sub(a).Times(after / (before + after))).
		Add(c.Sub(b))
	return b.Add(tangent.Times(1.0 / 3))
}
