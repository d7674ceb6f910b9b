package solver_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// screwTolerance is how well central differences over screwStep of the rack agree
// with the screw axis, mm by mm.
const (
	screwStep      = 0.01 // mm
	screwTolerance = 1e-6
)

// spinOf returns the spin axis of a left wheel, outboard.
func spinOf(p *solver.Position) solver.Vec {
	toe, camber := float64(p.Toe), float64(p.Camber)
	return solver.Vec{X: math.Cos(camber) * math.Sin(toe), Y: math.Cos(camber) * math.Cos(toe), Z: -math.Sin(camber)}
}

// axisAtGround returns a point of the steering axis of a left wheel, by its scrub
// radius and trail, and its direction, upward.
func axisAtGround(p *solver.Position, tyreRadius float64) (at, dir solver.Vec) {
	e, c := spinOf(p), p.WheelCentre
	k := tyreRadius * e.Z / (e.X*e.X + e.Y*e.Y)
	at = solver.Vec{X: c.X + k*e.X + p.Trail, Y: c.Y + k*e.Y - p.ScrubRadius, Z: c.Z - tyreRadius}
	return at, r3.Unit(solver.Vec{X: -math.Tan(float64(p.Caster)), Y: -math.Tan(float64(p.KingpinInclination)), Z: 1})
}

// TestMultiLinkSteersAboutItsAxis turns the rack a little at several poses and
// asks that wheel centre and spin axis move as on a screw about the steering axis
// that the position states: its place as well as its direction.
func TestMultiLinkSteersAboutItsAxis(t *testing.T) {
	r := seeded(40)
	for range 20 {
		d := specimens[3].design(t)
		scatter(r, d, 20)
		x := assembled(t, d, nil)
		travel, steer := 120*r.Float64()-60, 40*r.Float64()-20
		at := func(s float64) *solver.Position {
			in := solver.SweepInput{Travels: []float64{travel}, From: solver.Attitude{Steer: s}, Sides: solver.LeftOnly, Ground: true}
			return &swept(t, x, in)[solver.Left].Positions[0]
		}
		p, less, more := at(steer), at(steer-screwStep), at(steer+screwStep)
		foot, axis := axisAtGround(p, d.TyreRadius)
		rate := func(f func(*solver.Position) solver.Vec) solver.Vec {
			return r3.Scale(1/(2*screwStep), r3.Sub(f(more), f(less)))
		}
		turning := rate(spinOf)
		moving := rate(func(p *solver.Position) solver.Vec { return p.WheelCentre })
		lever := r3.Cross(axis, spinOf(p))
		omega := r3.Scale(r3.Dot(turning, lever)/r3.Norm2(lever), axis)
		near(t, "turn of the spin axis off the screw", r3.Norm(r3.Sub(turning, r3.Cross(omega, spinOf(p)))), 0, screwTolerance)
		across := r3.Sub(moving, r3.Scale(r3.Dot(moving, axis), axis))
		near(t, "movement of the centre off the screw", r3.Norm(r3.Sub(across, r3.Cross(omega, r3.Sub(p.WheelCentre, foot)))), 0, screwTolerance)
	}
}
