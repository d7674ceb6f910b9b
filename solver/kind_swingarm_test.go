package solver_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// TestSwingArmTurnsWhole: a tie rod whose inner ball stands on the hinge lets arm and
// knuckle turn as one body, so that every figure follows from one turn about the
// hinge: Euler's formula, any textbook of mechanics. The turn is found by halving.
func TestSwingArmTurnsWhole(t *testing.T) {
	for _, i := range []int{6, 7} {
		d := specimens[i].design(t)
		for _, s := range solver.Sides {
			p := d.Points[s]
			p[5] = r3.Add(p[0], r3.Scale(0.2, r3.Sub(p[1], p[0])))
		}
		in := solver.SweepInput{Travels: []float64{-60, -25, 0, 30, 70}}
		got := swept(t, assembled(t, d, nil), in)
		for _, s := range solver.Sides {
			front, axis := d.Points[s][0], r3.Unit(r3.Sub(d.Points[s][1], d.Points[s][0]))
			arm, spin := r3.Sub(d.Points[s][6], front), spinAxis(d, s)
			for k, travel := range in.Travels {
				turn := turnThatLifts(arm, axis, travel)
				centre := r3.Add(front, r3.Rotate(arm, turn, axis))
				e := r3.Rotate(spin, turn, axis)
				out := math.Copysign(1, d.Points[s][6].Y)
				p := got[s].Positions[k]
				near(t, "wheel centre", r3.Norm(r3.Sub(p.WheelCentre, centre)), 0, 1e-8)
				near(t, "toe", p.Toe.Degrees(), solver.Angle(math.Atan2(e.X, out*e.Y)).Degrees(), 1e-9)
				near(t, "camber", p.Camber.Degrees(), solver.Angle(math.Asin(-e.Z)).Degrees(), 1e-9)
			}
		}
	}
}

// spinAxis returns the outboard spin axis of a side in the static position.
func spinAxis(d *solver.Design, s solver.Side) solver.Vec {
	st, ct := math.Sincos(d.Toe[s].Radians())
	sc, cc := math.Sincos(d.Camber[s].Radians())
	return solver.Vec{X: st * cc, Y: math.Copysign(ct*cc, d.Points[s][6].Y), Z: -sc}
}

// turnThatLifts returns the angle about axis, within 40 degrees either way, that
// raises the end of arm by travel.
func turnThatLifts(arm, axis solver.Vec, travel float64) float64 {
	lift := func(a float64) float64 { return r3.Rotate(arm, a, axis).Z - arm.Z }
	lo, hi := -0.7, 0.7
	if lift(lo) > lift(hi) {
		lo, hi = hi, lo
	}
	for range 100 {
		if mid := (lo + hi) / 2; lift(mid) < travel {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
