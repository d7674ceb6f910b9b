package solver_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

const casterSource = "Caster measured by sweeping the wheel: (camber in the left turn - camber in the right turn) / (2 sin s), s the steer to each side, " +
	"and the trade's 180/pi rule on the total sweep. Exact vector model, left wheel, recomputed; caster and kingpin inclination are projected angles. " +
	"On an invented double wishbone whose wheel centre lies on the steering axis, so that steering is a pure turn about it."

var casterReferences = []reference{{"Caster by sweeping the wheel", casterSource, casterSweep}}

// pivotCar returns a double wishbone whose steering axis passes the wheel centre
// at these angles, deg.
func pivotCar(t testing.TB, caster, kpi, camber float64) *solver.Axle {
	axis := solver.Vec{X: -math.Tan(caster * math.Pi / 180), Y: -math.Tan(kpi * math.Pi / 180), Z: 1}
	wheel := solver.Vec{Y: 700, Z: 300}
	lower, upper := r3.Add(wheel, r3.Scale(-110, axis)), r3.Add(wheel, r3.Scale(140, axis))
	return assembled(t, design(t, "double-wishbone", []solver.Vec{
		{X: 150, Y: 330, Z: 195}, {X: -150, Y: 330, Z: 190}, lower,
		{X: 110, Y: 400, Z: 450}, {X: -120, Y: 400, Z: 440}, upper,
		{X: -130, Y: 690, Z: 250}, {X: -130, Y: 340, Z: 255}, wheel,
	}, 0, camber), nil)
}

// estimateError is the share by which the rule of the sine may be off.
const estimateError = 0.006

func casterSweep(t *testing.T) []claim {
	var cs []claim
	for _, tt := range []struct {
		caster, kpi, camber, sweep float64
		left, right, sine, trade   float64 // trade is 0 where the source has none
	}{
		{5, 10, 0, 20, +2.330807, -1.103173, 5.020142, 4.918813},
		{5, 0, 0, 20, +1.713944, -1.713944, 5.011236, 4.910087},
		{8, 7, -2, 20, +1.175361, -4.311265, 8.020910, 7.859013},
		{3, 13, 0.5, 20, +2.334330, +0.270374, 3.017301, 2.956399},
		{5, 10, 0, 10, +1.025444, -0.716141, 5.014696, 0},
		{0, 10, 0, 20, math.NaN(), math.NaN(), 0, 0},
	} {
		x := pivotCar(t, tt.caster, tt.kpi, tt.camber)
		left, right := camberAt(t, x, tt.sweep), camberAt(t, x, -tt.sweep)
		at := fmt.Sprintf(", caster %g, kingpin %g, camber %g, ±%g deg", tt.caster, tt.kpi, tt.camber, tt.sweep)
		if tt.caster != 0 {
			cs = append(cs,
				claim{"camber to the left" + at, "deg", tt.left, left, 1e-6},
				claim{"camber to the right" + at, "deg", tt.right, right, 1e-6})
		}
		sine := (left - right) / (2 * math.Sin(tt.sweep*math.Pi/180))
		cs = append(cs,
			claim{"caster by the sine" + at, "deg", tt.sine, sine, 2e-6},
			claim{"true caster" + at, "deg", tt.caster, sine, estimateError*tt.caster + 1e-9})
		if tt.trade != 0 {
			cs = append(cs, claim{"caster by 180/pi" + at, "deg", tt.trade, 180 / math.Pi * (left - right) / (2 * tt.sweep), 2e-6})
		}
	}
	return cs
}

// camberAt returns the camber of the left wheel steered to the left by deg.
func camberAt(t *testing.T, x *solver.Axle, deg float64) float64 {
	t.Helper()
	p, err := x.SteerFor(solver.NewWorkspace(), solver.Left, solver.Deg(deg), solver.Attitude{})
	if err != nil {
		t.Fatal(err)
	}
	return p.Position[solver.Left].Camber.Degrees()
}
