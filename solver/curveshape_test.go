package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestCurveShape splits errors whose parts are known by hand.
func TestCurveShape(t *testing.T) {
	even := []float64{-20, -10, 0, 10, 20}
	skew := []float64{-10, 0, 10, 20, 30}
	for _, tt := range []struct {
		name                        string
		z                           []float64
		f                           func(z float64) float64
		slope, curvature, remainder float64 // shares
	}{
		{"line", even, func(z float64) float64 { return 3e-4 * z }, 1, 0, 0},
		{"bow", even, func(z float64) float64 { return 2e-6 * z * z }, 0, 1, 0},
		// Of z³ at -2..2, the slope is (16+1+1+16)/10 = 3.4: 3.4²·10/130.
		{"cubic", even, func(z float64) float64 { return 1e-8 * z * z * z }, 3.4 * 3.4 * 10 / 130, 0, 1 - 3.4*3.4*10/130},
		// Of z² at -1..3, the slope is (-1+1+8+27)/15: its square·15/(1+1+16+81).
		{"bow, lopsided", skew, func(z float64) float64 { return 1e-6 * z * z }, 35.0 * 35 / 15 / 99, 1 - 35.0*35/15/99, 0},
		{"nothing", even, func(float64) float64 { return 0 }, 0, 0, 0},
	} {
		var e []float64
		sum := 0.0
		for _, z := range tt.z {
			e = append(e, tt.f(z))
			sum += tt.f(z) * tt.f(z)
		}
		got := solver.NewCurveShape(tt.z, e)
		near(t, tt.name+" slope", got.Slope.Share, tt.slope, 1e-12)
		near(t, tt.name+" curvature", got.Curvature.Share, tt.curvature, 1e-12)
		near(t, tt.name+" remainder", got.Remainder.Share, tt.remainder, 1e-12)
		near(t, tt.name+" rms", float64(got.RMS), math.Sqrt(sum/float64(len(e))), 1e-15)
		near(t, tt.name+" part", float64(got.Slope.RMS), math.Sqrt(tt.slope)*float64(got.RMS), 1e-12)
	}
}
