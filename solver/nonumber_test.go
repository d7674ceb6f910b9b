package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestNoNumbers gives every call that moves an axle what is not a number: each must
// end, and with an error.
func TestNoNumbers(t *testing.T) {
	nan := math.NaN()
	damper := solver.TravelGauge{Reading: solver.DamperReading, Damper: solver.Damper{Body: solver.Vec{Y: 400, Z: 800}, Wheel: solver.Vec{Y: 600, Z: 300}}}
	for _, file := range []string{"dw01_saloon_rear_steer.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, "../testdata/cases/"+file)
		x := c.Study.candidate(t, c.Study.design(t), "base")
		ws := solver.NewWorkspace()
		for name, call := range map[string]func() error{
			"Steer, height": func() error {
				return x.Steer(ws, &solver.SteerInput{Inputs: []float64{0}, At: solver.Attitude{Heave: nan}}, &solver.SteerCurve{})
			},
			"Steer, input": func() error {
				return x.Steer(ws, &solver.SteerInput{Inputs: []float64{nan}}, &solver.SteerCurve{})
			},
			"SteerFor, angle": func() error {
				_, err := x.SteerFor(ws, solver.Left, solver.Angle(nan), solver.Attitude{})
				return err
			},
			"SteerFor, roll": func() error {
				_, err := x.SteerFor(ws, solver.Left, 0.1, solver.Attitude{Roll: nan})
				return err
			},
			"ReadTravel":        func() error { _, err := x.ReadTravel(ws, solver.Left, &damper, nan); return err },
			"TravelOf":          func() error { _, err := x.TravelOf(ws, solver.Left, &damper, nan); return err },
			"TravelOf, no ends": func() error { _, err := x.TravelOf(ws, solver.Left, &damper, math.Inf(1)); return err },
			"OuterPath":         func() error { _, err := x.OuterPath(ws, solver.Left, []float64{nan}, nil); return err },
			"Diagnose":          func() error { _, err := x.Diagnose(ws, solver.Left, []float64{nan}, nil); return err },
		} {
			if err := call(); err == nil {
				t.Errorf("%s: %s: no error", file, name)
			}
		}
	}
}
