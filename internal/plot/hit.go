package plot

import "math"

// Curve is a list of values (X[i], Y[i]) in the units of a frame.
type Curve struct{ X, Y []float64 }

func (c Curve) len() int { return min(len(c.X), len(c.Y)) }

// Hit is the place of a curve under a pointer: Part of the way from value Index to
// the next, on the straight line between them.
type Hit struct {
	Curve, Index int
	Part         float64 // 0..1
	At           Point
	Distance     float64 // from the pointer, in units of the paper
}

// Hit returns the place nearest to the pointer on any of the curves, as far as the
// frame shows them; of two at the same distance the later curve, which is drawn
// over the other. ok is false where none is within the radius.
func (f Frame) Hit(curves []Curve, pointer Point, radius float64) (hit Hit, ok bool) {
	for i, c := range curves {
		for j := range c.len() {
			h := f.segmentHit(c, j, pointer)
			if h.Distance <= radius && (!ok || h.Distance <= hit.Distance) {
				h.Curve = i
				hit, ok = h, true
			}
		}
	}
	return hit, ok
}

// segmentHit returns the nearest place between value i and the next; of the last
// value, the value. Where there is none the distance is infinite.
func (f Frame) segmentHit(c Curve, i int, pointer Point) Hit {
	a := f.At(c.X[i], c.Y[i])
	b := a
	if next := i + 1; next < c.len() {
		if q := f.At(c.X[next], c.Y[next]); q.finite() {
			b = q
		}
	}
	from, to, ok := f.Area.clip(a, b)
	if !ok || !a.finite() {
		return Hit{Distance: math.Inf(1)}
	}
	at := nearestOnLine(from, to, pointer)
	return Hit{Index: i, Part: part(a, b, at), At: at, Distance: at.Sub(pointer).Length()}
}

// nearestOnLine returns the point nearest to p on the line from a to b.
func nearestOnLine(a, b, p Point) Point { return a.Towards(b, clamp(part(a, b, p), 0, 1)) }

// part returns how far p has come on the way from a to b; 0 where they coincide.
func part(a, b, p Point) float64 {
	d := b.Sub(a)
	if square := d.Dot(d); square > 0 {
		return p.Sub(a).Dot(d) / square
	}
	return 0
}

// NearestPoint returns the index of the point nearest to the pointer, as of the
// handles of a drawing; of two at the same distance the later. ok is false where
// none is within the radius.
func NearestPoint(points []Point, pointer Point, radius float64) (index int, ok bool) {
	for i, p := range points {
		if d := p.Sub(pointer).Length(); d <= radius {
			index, radius, ok = i, d, true
		}
	}
	return index, ok
}
