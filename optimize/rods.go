package optimize

import (
	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// rods are the lengths, in mm, of what brings static toe back.
type rods struct{ tie, drag float64 }

// rodsOf returns the lengths of the tie rod of a side, or of the tie rod and the
// drag link of a solid axle, in the static position of a car.
func rodsOf(x *solver.Axle, s solver.Side) rods {
	k := x.Design().Kind
	outer := x.StaticPoint(s, indexOfRole(k.SidePoints, solver.TieRodOuterRole))
	if !x.Solid() {
		inner := x.StaticPoint(s, indexOfRole(k.SidePoints, solver.TieRodInnerRole))
		return rods{tie: r3.Norm(r3.Sub(outer, inner))}
	}
	other := x.StaticPoint(1-s, indexOfRole(k.SidePoints, solver.TieRodOuterRole))
	from := x.StaticCommonPoint(indexOfRole(k.CommonPoints, solver.DragInnerRole))
	to := x.StaticCommonPoint(indexOfRole(k.CommonPoints, solver.DragOuterRole))
	return rods{tie: r3.Norm(r3.Sub(outer, other)), drag: r3.Norm(r3.Sub(to, from))}
}

// indexOfRole returns the index of the point with a role, which every kind has.
func indexOfRole(ps []solver.Hardpoint, r solver.Role) int {
	for i := range ps {
		if ps[i].Role == r {
			return i
		}
	}
	return -1
}
