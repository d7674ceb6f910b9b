package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Rows of a solid axle's system after those of its four links: drag link and tie rod, and
// from heightRow on the heights of both wheels.
const (
	dragRow, beamTieRow, heightRow = 4, 5, 6
)

// beamRows are the constraints on a solid axle in one pose, as equations for a small
// movement: wrenches on the beam, and the derivatives by a turn of a kingpin.
type beamRows struct {
	links   [4]wrench
	drag    wrench
	heights [2]wrench
	ball    Vec        // the drag link's on the knuckle, from the moved reference point
	tie     Vec        // unit vector along the tie rod, to the left; the beam feels none of it
	pulled  float64    // the drag link's, by the kingpin of the knuckle that it pulls
	apart   [2]float64 // the tie rod's
	lift    [2]float64 // each wheel's, by its own
}

// constrain sets w to the constraints of b in the pose at, the drag link's inner ball
// displaced by shift.
func (b *beam) constrain(at *axlePose, shift Vec, w *beamRows) {
	for i := range b.links {
		r := &b.links[i]
		arm := at.r.turn(r.b)
		w.links[i] = pull(r3.Scale(r.inv, r3.Sub(b.at(at, arm), r.a)), arm)
	}
	w.ball = b.dragOuter(at)
	force := r3.Scale(b.drag.inv, r3.Sub(r3.Sub(b.at(at, w.ball), b.drag.a), shift))
	w.drag = pull(force, w.ball)
	w.pulled = at.ends[b.pulls].torque(force, w.ball)
	left, right := &at.ends[Left], &at.ends[Right]
	w.tie = r3.Scale(1/b.tie, r3.Sub(left.arm, right.arm))
	w.apart = [2]float64{left.torque(w.tie, left.arm), -right.torque(w.tie, right.arm)}
	for i := range at.ends {
		e := &at.ends[i]
		w.heights[i] = pull(up, e.wheel)
		w.lift[i] = e.torque(up, e.wheel)
	}
}

// torque returns the moment about the kingpin of a force at x.
func (e *endPose) torque(force, x Vec) float64 {
	return r3.Dot(e.dir, r3.Cross(r3.Sub(x, e.foot), force))
}

// beamTriple names three of the rows on the beam alone, its links and the heights, that
// between them fix the velocity of its reference point, and the other three.
type beamTriple struct{ fixes, others [3]int }

const (
	// minTriple is the least determinant of the forces of a triple with which the velocity
	// is worth eliminating by it.
	minTriple = 0.05
	// maxLean is the largest share of the drag link's force in that of a wheel's height
	// with which the kingpins are worth eliminating first. On usual axles it is a tenth.
	maxLean = 1.0
)

// bestTriple returns the triple of b with the largest determinant in its static position.
func (b *beam) bestTriple() (best beamTriple) {
	var force [6]Vec
	for i := range b.links {
		force[i] = r3.Scale(b.links[i].inv, b.links[i].static)
	}
	force[4], force[5] = up, up
	size := -1.0
	for i := range force {
		for j := i + 1; j < len(force); j++ {
			for k := j + 1; k < len(force); k++ {
				if d := math.Abs(r3.Dot(force[i], r3.Cross(force[j], force[k]))); d > size {
					best, size = newBeamTriple(i, j, k), d
				}
			}
		}
	}
	return best
}

func newBeamTriple(i, j, k int) beamTriple {
	t := beamTriple{fixes: [3]int{i, j, k}}
	n := 0
	for r := range 6 {
		if r != i && r != j && r != k {
			t.others[n] = r
			n++
		}
	}
	return t
}

// beamSplit is the factored form of beamRows. The kingpins' turns follow from drag link
// and tie rod; what that adds to the heights leaves six rows on the beam alone, of which a
// triple gives the velocity for any turn, and the rest the turn.
type beamSplit struct {
	triple  beamTriple
	w       [6]wrench
	lean    [2]float64 // share of the drag link in each wheel's height
	share   [3][3]float64
	forces  [3]Vec // reciprocal to those of the triple
	moments [3]Vec // reciprocal to the reduced ones of the others
}

// factor sets s to the factors of w. It returns false where they are singular, or unfit
// to be solved so.
func (s *beamSplit) factor(b *beam, w *beamRows) bool {
	s.triple = b.triple
	k, o := b.pulls, 1-b.pulls
	s.lean[k] = w.lift[k] / w.pulled
	s.lean[o] = -w.lift[o] * w.apart[k] / (w.apart[o] * w.pulled)
	copy(s.w[:], w.links[:])
	for i, lean := range s.lean {
		if !(math.Abs(lean) <= maxLean) {
			return false
		}
		s.w[4+i] = wrench{axpy(-lean, w.drag.force, w.heights[i].force), axpy(-lean, w.drag.moment, w.heights[i].moment)}
	}
	t := &s.triple
	p, q, r := &s.w[t.fixes[0]], &s.w[t.fixes[1]], &s.w[t.fixes[2]]
	if det := reciprocal(p.force, q.force, r.force, &s.forces); !(math.Abs(det) > minTriple) {
		return false
	}
	var m [3]Vec
	for i, other := range t.others {
		x, c := &s.w[other], &s.share[i]
		c[0], c[1], c[2] = r3.Dot(x.force, s.forces[0]), r3.Dot(x.force, s.forces[1]), r3.Dot(x.force, s.forces[2])
		m[i] = axpy(-c[2], r.moment, reduce(x.moment, c[0], p.moment, c[1], q.moment))
	}
	det := reciprocal(m[0], m[1], m[2], &s.moments)
	return det*det > loose*loose*r3.Norm2(m[0])*r3.Norm2(m[1])*r3.Norm2(m[2])
}

// reciprocal sets out to the vectors reciprocal to a, b and c, and returns the determinant
// of those.
func reciprocal(a, b, c Vec, out *[3]Vec) float64 {
	x := r3.Cross(b, c)
	det := r3.Dot(a, x)
	i := 1 / det
	out[0], out[1], out[2] = r3.Scale(i, x), r3.Scale(i, r3.Cross(c, a)), r3.Scale(i, r3.Cross(a, b))
	return det
}

// solve returns the movement that the rows w of b, of which s is the factored form,
// answer with f.
func (s *beamSplit) solve(b *beam, w *beamRows, f *[beamUnknowns]float64) (omega, v Vec, turn [2]float64) {
	k, o := b.pulls, 1-b.pulls
	var g [6]float64
	copy(g[:], f[:dragRow])
	for i, lean := range s.lean {
		g[4+i] = f[heightRow+i] - lean*f[dragRow]
	}
	g[4+o] -= w.lift[o] / w.apart[o] * f[beamTieRow]
	t := &s.triple
	p, q, r := g[t.fixes[0]], g[t.fixes[1]], g[t.fixes[2]]
	for i, other := range t.others {
		c := &s.share[i]
		omega = axpy(g[other]-c[0]*p-c[1]*q-c[2]*r, s.moments[i], omega)
	}
	p -= r3.Dot(s.w[t.fixes[0]].moment, omega)
	q -= r3.Dot(s.w[t.fixes[1]].moment, omega)
	r -= r3.Dot(s.w[t.fixes[2]].moment, omega)
	v = axpy(p, s.forces[0], axpy(q, s.forces[1], r3.Scale(r, s.forces[2])))
	turn[k] = (f[dragRow] - r3.Dot(w.drag.force, v) - r3.Dot(w.drag.moment, omega)) / w.pulled
	turn[o] = (f[beamTieRow] - w.apart[k]*turn[k]) / w.apart[o]
	return omega, v, turn
}
