package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// cubic returns positions of the toe c0 + c1·z + c2·z² + c3·z³ at these travels.
func cubic(travels []float64, c0, c1, c2, c3 float64) []solver.Position {
	var ps []solver.Position
	for _, z := range travels {
		ps = append(ps, solver.Position{Travel: z, Toe: solver.Angle(c0 + z*(c1+z*(c2+z*c3)))})
	}
	return ps
}

// TestFigures holds the figures of curves that are known by hand.
func TestFigures(t *testing.T) {
	travels := []float64{-20, -10, 0, 10, 20}
	ramp := func(z float64) solver.Angle { return solver.Angle(1e-4 * z) }
	for _, tt := range []struct {
		name   string
		ps     []solver.Position
		target func(float64) solver.Angle
		want   solver.Figures
	}{
		{"flat", cubic(travels, 1e-3, 0, 0, 0), nil, solver.Figures{}},
		{"ramp", cubic(travels, 1e-3, 1e-4, 0, 0), nil, solver.Figures{
			PeakToPeak: 4e-3, Worst: -2e-3, WorstTravel: -20, Peak: 2e-3, PeakTravel: -20,
			RMS: solver.Angle(1e-4 * math.Sqrt(200)), Crosses: true}},
		{"ramp wanted", cubic(travels, 1e-3, 1e-4, 0, 0), ramp, solver.Figures{
			PeakToPeak: 4e-3, Worst: -2e-3, WorstTravel: -20, Crosses: true}},
		{"bowl", cubic(travels, 1e-4, 0, 1e-6, 0), nil, solver.Figures{
			PeakToPeak: 4e-4, Worst: 4e-4, WorstTravel: -20, Peak: 4e-4, PeakTravel: -20,
			RMS: solver.Angle(1e-6 * math.Sqrt((2*400*400+2*100*100)/5.0))}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, ok := solver.NewFigures(tt.ps, tt.target)
			if !ok {
				t.Fatal("no position at travel 0")
			}
			const tol = 1e-12
			near(t, "peak to peak", float64(got.PeakToPeak), float64(tt.want.PeakToPeak), tol)
			near(t, "worst", float64(got.Worst), float64(tt.want.Worst), tol)
			near(t, "worst travel", got.WorstTravel, tt.want.WorstTravel, tol)
			near(t, "peak", float64(got.Peak), float64(tt.want.Peak), tol)
			near(t, "rms", float64(got.RMS), float64(tt.want.RMS), tol)
			if got.Crosses != tt.want.Crosses {
				t.Errorf("crosses = %t, want %t", got.Crosses, tt.want.Crosses)
			}
		})
	}
}

// TestFiguresNeedHome refuses a curve without a position at travel 0.
func TestFiguresNeedHome(t *testing.T) {
	if _, ok := solver.NewFigures(cubic([]float64{-5, 5}, 0, 0, 0, 0), nil); ok {
		t.Error("figures without travel 0")
	}
}

// TestFiguresOfTextbook takes the slope of Rill's example, 2.525704797 deg/m, from
// a sweep (recomputed from the published coordinates).
func TestFiguresOfTextbook(t *testing.T) {
	out := swept(t, assembled(t, rillDesign(t), nil), solver.SweepInput{Travels: []float64{-50, 0, 50}, Instant: true})
	f, _ := solver.NewFigures(out[solver.Left].Positions, nil)
	near(t, "slope, deg/m", f.Slope*perMetre, 2.525704797, 1e-8)
	near(t, "peak to peak, deg", f.PeakToPeak.Degrees(), 0.113586122+0.152228635, 2e-9)
}
