package plot

import "math"

// AppendBar appends the two lines of a rod, from circle to circle, without the
// circles: for a link whose ends are drawn otherwise.
func AppendBar(dst Path, a, b Point, width, ball float64) Path {
	d := b.Sub(a)
	side := d.Unit().Across().Times(width / 2)
	// Where a line half a width from the middle meets the circle.
	hidden := math.Sqrt(max(ball*ball-width*width/4, 0))
	if !(d.Length() > 2*hidden) {
		return dst
	}
	from, to := a.Add(d.Unit().Times(hidden)), b.Sub(d.Unit().Times(hidden))
	return dst.Polyline(from.Add(side), to.Add(side)).Polyline(from.Sub(side), to.Sub(side))
}

// AppendStrut appends a strut from its lower end to its top mount: the tube over the
// lower part, the thinner rod that slides in it, and the mount square to them. The
// spring is left out, for it would hide what turns about the strut.
func AppendStrut(dst Path, lower, top Point, width float64) Path {
	d := top.Sub(lower)
	if !d.finite() {
		return dst
	}
	side := d.Unit().Across().Times(width / 2)
	neck := lower.Add(d.Times(tubePart))
	dst = dst.Polygon(lower.Add(side), neck.Add(side), neck.Sub(side), lower.Sub(side))
	thin := side.Times(rodPart)
	dst = dst.Polyline(neck.Add(thin), top.Add(thin)).Polyline(neck.Sub(thin), top.Sub(thin))
	return dst.Polyline(top.Add(side.Times(mountPart)), top.Sub(side.Times(mountPart)))
}

// parts of a strut: of its length that is tube; of the tube's width that the rod and
// the mount are wide.
const (
	tubePart  = 0.55
	rodPart   = 0.4
	mountPart = 1.8
)
