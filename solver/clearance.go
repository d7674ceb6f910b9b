package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Segment is the straight line between two points, mm: a rod. A ball is a segment
// whose ends coincide.
type Segment struct{ A, B Vec }

// at returns the point at the share u of the way from A to B.
func (s Segment) at(u float64) Vec { return axpy(u, r3.Sub(s.B, s.A), s.A) }

// Distance returns the least distance between two segments, mm: 0 where they
// cross.
func (s Segment) Distance(o Segment) float64 {
	d, e, r := r3.Sub(s.B, s.A), r3.Sub(o.B, o.A), r3.Sub(s.A, o.A)
	dd, ee, de := r3.Dot(d, d), r3.Dot(e, e), r3.Dot(d, e)
	dr, er := r3.Dot(d, r), r3.Dot(e, r)
	u := 0.0
	if det := dd*ee - de*de; det > parallel*dd*ee {
		u = clamp((de*er-dr*ee)/det, 0, 1)
	}
	// The nearest point of the other to that of one, and back again.
	v := share(de*u+er, ee)
	u = share(de*v-dr, dd)
	return r3.Norm(r3.Sub(s.at(u), o.at(v)))
}

// parallel is the squared sine below which two lines count as parallel: any point
// of one is then as near to the other as rounding lets tell.
const parallel = 1e-14

// share returns a/b within 0 and 1, and 0 for a segment without length.
func share(a, b float64) float64 {
	if !(b > 0) {
		return 0
	}
	return clamp(a/b, 0, 1)
}

// Plane bounds the free space that its normal points into.
type Plane struct{ Point, Normal Vec }

// Clearance returns the least distance of a segment from the plane, mm, negative
// by how far it reaches behind it.
func (p Plane) Clearance(s Segment) float64 {
	n := r3.Unit(p.Normal)
	return math.Min(r3.Dot(n, r3.Sub(s.A, p.Point)), r3.Dot(n, r3.Sub(s.B, p.Point)))
}

// Rim is the inside of a wheel's rim. The wheel, rim and tyre, fills all that lies
// farther than Radius from the wheel's axis and outboard of the rim's inner edge,
// which is a circle Offset inboard of the wheel centre, square to the axis.
type Rim struct{ Radius, Offset float64 } // mm

// Clearance returns the least distance, mm, between a segment and a wheel at
// centre whose unit spin axis points outboard, negative by how deep the segment
// enters it. It is exact to [rimLimit].
func (r Rim) Clearance(centre, spin Vec, s Segment) float64 {
	length := r3.Norm(r3.Sub(s.B, s.A))
	return leastClearance(func(u float64) float64 { return r.fromPoint(centre, spin, s.at(u)) }, length)
}

// fromPoint returns the distance of a point from the wheel, negative inside it.
func (r Rim) fromPoint(centre, spin, p Vec) float64 {
	d := r3.Sub(p, centre)
	inboard := -r3.Dot(d, spin)
	outward := r3.Norm(axpy(inboard, spin, d)) - r.Radius
	past := inboard - r.Offset
	switch {
	case outward >= 0 && past <= 0:
		return -math.Min(outward, -past)
	case past <= 0:
		return -outward
	case outward >= 0:
		return past
	}
	return math.Hypot(outward, past)
}
