package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestToeLengths compares with the definitions of linear toe: base·sin over a
// plate (computed to the digits given), 1/16 in over 28 in and 0.010 in over
// 15 in as angles.
func TestToeLengths(t *testing.T) {
	const inch = 25.4
	for _, tt := range []struct{ base, deg, want float64 }{
		{381, 0.1, 0.664970}, {381, 1, 6.649367}, {508, 1, 8.865822},
	} {
		near(t, "PlateToe", solver.PlateToe(solver.Deg(tt.deg), tt.base), tt.want, 1e-6)
	}
	near(t, "1/16 in over 28 in", solver.ToeOfPlate(inch/16, 28*inch).Degrees(), 0.12789247, 1e-8)
	near(t, "0.010 in over 15 in", solver.ToeOfPlate(0.010*inch, 15*inch).Degrees(), 0.03819719, 1e-8)
	near(t, "IndicatorToe", solver.IndicatorToe(solver.Deg(45), 300), 300, 1e-12)
}

// TestToeLengthsInvert turns angles into readings and back.
func TestToeLengthsInvert(t *testing.T) {
	for _, deg := range []float64{-12, -0.3, 0, 1e-6, 2, 25} {
		a := solver.Deg(deg)
		near(t, "indicators", solver.ToeOfIndicators(solver.IndicatorToe(a, 300), 300).Degrees(), deg, 1e-12)
		near(t, "plate", solver.ToeOfPlate(solver.PlateToe(a, 300), 300).Degrees(), deg, 1e-12)
	}
	if a := solver.ToeOfPlate(301, 300); !math.IsNaN(float64(a)) {
		t.Errorf("ToeOfPlate(301, 300) = %g, want NaN", a)
	}
}

// TestScrub compares with sideways slip per distance rolled, sin(toe): m per km,
// ft per mile.
func TestScrub(t *testing.T) {
	near(t, "m/km", solver.Scrub(solver.Deg(0.1), 1000), 1.745328, 1e-6)
	near(t, "m/km", solver.Scrub(solver.Deg(1), 1000), 17.452406, 1e-6)
	near(t, "ft/mile", solver.Scrub(solver.Deg(0.1), 5280), 9.2153, 5e-5)
}

// TestToeSlopeOver turns the common-practice 0.030 in per inch over a 15 in plate
// into a slope and back.
func TestToeSlopeOver(t *testing.T) {
	const base = 15 * 25.4
	near(t, "mm per mm", solver.ToeSlopeOver(0.030/base, base), 0.030, 1e-15)
	// The same, as the change of a plate's reading at straight ahead.
	h := solver.Angle(1e-6)
	near(t, "of a plate", (solver.PlateToe(h, base)-solver.PlateToe(-h, base))/2e-6, solver.ToeSlopeOver(1, base), 1e-6)
}
