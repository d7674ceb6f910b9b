package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// IdealInner is where the inner ball of a rod would have to be for the outer one
// to keep the toe: the centre of the sphere through the outer ball's static place
// that best fits its path, in the transverse plane in which the inner ball stands.
type IdealInner struct {
	At     Vec     // in vehicle axes, mm
	Move   Vec     // from where the ball is, in vehicle axes
	Length float64 // of the rod then, mm
	RMS    float64 // by which the path strays from it, mm
}

// IdealInner returns the ideal inner ball of side s for a toe change over travels:
// see [Axle.OuterPath]. It returns false where the path is too short or straight to
// have a centre.
func (x *Axle) IdealInner(ws *Workspace, s Side, travels []float64, target func(float64) Angle) (IdealInner, bool) {
	path, err := x.OuterPath(ws, s, travels, target)
	if err != nil {
		return IdealInner{}, false
	}
	inner := x.innerPlace(s)
	home := x.outerPlace(s)
	c, ok := fitCentre(path, home, inner)
	if !ok {
		return IdealInner{}, false
	}
	out := IdealInner{At: c, Move: r3.Sub(c, inner), Length: r3.Norm(r3.Sub(home, c))}
	out.RMS = strayRMS(path, home, c)
	return out, true
}

// innerPlace returns the inner ball of side s, of a solid axle that of its drag
// link, in the static position, in vehicle axes.
func (x *Axle) innerPlace(s Side) Vec {
	unit, ball := x.innerPoint(s)
	return x.static[unit].inVehicle(s, ball)
}

// outerPlace returns the other end of that rod likewise.
func (x *Axle) outerPlace(s Side) Vec {
	st, _ := x.unitOf(s)
	return st.inVehicle(s, st.u.geared().outer)
}

// inVehicle returns the static place of point i in vehicle axes; s is the side of
// a corner.
func (st *staticUnit) inVehicle(s Side, i int) Vec {
	if st.u.beam {
		return st.pts[i]
	}
	return s.Mirrored(st.pts[i])
}

// strayRMS returns the root mean square of how much farther points lie from c than
// home does.
func strayRMS(ps []Vec, home, c Vec) float64 {
	sum, length := 0.0, r3.Norm(r3.Sub(home, c))
	for _, p := range ps {
		d := r3.Norm(r3.Sub(p, c)) - length
		sum += d * d
	}
	return math.Sqrt(sum / float64(len(ps)))
}

// Bounds of the fit of a sphere.
const (
	maxFitSteps = 50
	// fitLimit is the last step, mm, of a fit that has arrived.
	fitLimit = 1e-8
	// flatFit is the squared sine, between what moving the centre across and up
	// does to the distances, below which rounding decides between the two.
	flatFit = 1e-12
	// maxCentre is the farthest, in mm, that a centre may lie from where the
	// ball is: beyond it the path is as good as straight.
	maxCentre = 1e5
)

// fitCentre returns the centre, at the x of start, of the sphere through home from
// which points deviate least, by least squares of the distances: Gauss and Newton's
// method on y and z.
func fitCentre(ps []Vec, home, start Vec) (Vec, bool) {
	c := start
	for range maxFitSteps {
		dy, dz, ok := fitStep(ps, home, c)
		if !ok {
			return Vec{}, false
		}
		c.Y, c.Z = c.Y+dy, c.Z+dz
		if !(r3.Norm(r3.Sub(c, start)) <= maxCentre) {
			return Vec{}, false
		}
		if math.Abs(dy)+math.Abs(dz) <= fitLimit {
			return c, true
		}
	}
	return Vec{}, false
}

// fitStep returns the change of the centre that a linear fit asks for. It returns
// false where the points do not settle both its coordinates.
func fitStep(ps []Vec, home, c Vec) (dy, dz float64, ok bool) {
	var yy, yz, zz, y, z float64
	to, length := r3.Unit(r3.Sub(home, c)), r3.Norm(r3.Sub(home, c))
	for _, p := range ps {
		d := r3.Sub(p, c)
		g, miss := r3.Sub(to, r3.Unit(d)), r3.Norm(d)-length
		yy, yz, zz = yy+g.Y*g.Y, yz+g.Y*g.Z, zz+g.Z*g.Z
		y, z = y-g.Y*miss, z-g.Z*miss
	}
	det := yy*zz - yz*yz
	if !(det > flatFit*yy*zz) {
		return 0, 0, false
	}
	return (zz*y - yz*z) / det, (yy*z - yz*y) / det, true
}
