package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// LinkError is by how much the worst link of an axle misses its length.
type LinkError struct {
	Link string  // as messages name it
	Side Side    // it belongs to; of an axle's own links Left
	By   float64 // mm, positive where it is too long
}

// LinkError measures every rigid link between the places of p and compares it
// with the static position: a check of a solution that knows nothing of how it
// was found.
func (x *Axle) LinkError(p *Placed) LinkError {
	var worst LinkError
	for _, st := range x.static {
		_ = st.u.links(func(r *rodSpec) error {
			now := r3.Norm(r3.Sub(st.placed(p, r.outer), st.placed(p, r.inner)))
			by := now - r3.Norm(r3.Sub(st.pts[r.outer], st.pts[r.inner]))
			if !(math.Abs(by) <= math.Abs(worst.By)) { // NaN is worst
				worst = LinkError{Link: r.name, Side: st.u.wheels[0].side, By: by}
			}
			return nil
		})
	}
	return worst
}

// placed returns the place in p of point i of the unit, in V.
func (s *staticUnit) placed(p *Placed, i int) Vec {
	switch {
	case !s.u.beam:
		return p.Side[s.u.wheels[0].side][i]
	case i >= axleLinks:
		return p.Common[i-axleLinks]
	}
	return p.Side[i/axleSidePoints][i%axleSidePoints]
}
