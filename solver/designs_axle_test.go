package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// panhardHeight is the height of the straight axle's panhard rod in the centre
// plane, mm.
const panhardHeight = 420

// straightAxle is an invented solid axle whose links run level and straight fore
// and aft, with a panhard rod in the axle's transverse plane that falls by 40 mm
// to the right and upright kingpins.
func straightAxle(t testing.TB) *solver.Design {
	return trapezoidAxle(t, 1200, 200, 18)
}

// trapezoidAxle is that axle with its kingpins the distance w apart and steering
// arms of the length l that lie at b degrees from straight rearward, converging.
func trapezoidAxle(t testing.TB, w, l, b float64) *solver.Design {
	t.Helper()
	k, err := solver.KindByName("solid-axle")
	if err != nil {
		t.Fatal(err)
	}
	d := &solver.Design{Kind: k, TyreRadius: 320, Wheelbase: 2700, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{X: 1}}}
	sin, cos := math.Sincos(b * math.Pi / 180)
	left := []solver.Vec{
		{Y: w / 2, Z: 400}, {Y: w / 2, Z: 260},
		{X: -l * cos, Y: w/2 - l*sin, Z: 300}, {Y: w/2 + 80, Z: 320},
	}
	d.Points[solver.Left] = left
	for _, p := range left {
		d.Points[solver.Right] = append(d.Points[solver.Right], mirrored(p))
	}
	d.Common = []solver.Vec{
		{X: -800, Y: 350, Z: 300}, {X: 0, Y: 350, Z: 300},
		{X: -800, Y: -350, Z: 300}, {X: 0, Y: -350, Z: 300},
		{X: -700, Z: 500}, {X: 0, Z: 500},
		{Y: 450, Z: panhardHeight + 20}, {Y: -450, Z: panhardHeight - 20},
		{X: 700, Y: w/2 + 150, Z: 300}, {Y: w/2 + 150, Z: 300},
	}
	return d
}
