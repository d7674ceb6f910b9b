package solver_test

import (
	"math"
	"path/filepath"
	"strconv"
	"testing"

	"toewright/solver"
)

// TestTravelAndSteerRates compares the derivatives of the toe by the travel and by
// the steering input with central differences of sweeps, Richardson's
// extrapolation applied once.
func TestTravelAndSteerRates(t *testing.T) {
	for _, tt := range []struct {
		name, file string
		steer      float64 // mm of the rack, or rad of the pitman arm
		motion     solver.Motion
	}{
		{"wishbone", "dw01_saloon_rear_steer.json", 0, solver.BothWheels},
		{"wishbone steered", "dw05_antidive_skewed_axes.json", 12, solver.BothWheels},
		{"wishbone in roll", "dw07_large_caster.json", 0, solver.RollMotion},
		{"strut", "st01_hatch_rear_steer.json", 10, solver.BothWheels},
		{"multi-link, left wheel alone", "ml01_front_virtual_axis.json", -10, solver.LeftWheel},
		{"solid axle", "sa01_cross_steer_right_arm.json", 0, solver.BothWheels},
		{"solid axle in roll", "sa01_cross_steer_right_arm.json", 15, solver.RollMotion},
		{"centre link", "cl01_dw03.json", 0, solver.BothWheels},
		{"centre link steered", "cl01_dw03.json", 0.2, solver.BothWheels},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			none, err := x.Tangents(nil)
			if err != nil {
				t.Fatal(err)
			}
			in := solver.SweepInput{Travels: []float64{-40, -15, 0, 30}, Motion: tt.motion, From: solver.Attitude{Steer: tt.steer}, By: none}
			curves := swept(t, x, in)
			travel, steer := ratesByDifferences(t, x, in)
			for _, s := range solver.Sides {
				for i, at := range in.Travels {
					near(t, where(s, at)+"rate by travel", curves[s].ToeTravelRate(i), travel[s][i], rateTolerance)
					near(t, where(s, at)+"rate by steering", curves[s].ToeSteerRate(i), steer[s][i], rateTolerance)
				}
			}
		})
	}
}

// rateTolerance, in rad per mm or rad, covers rounding in a solved toe, some
// 1e-13 rad, over the smallest step of a difference, 1e-3.
const rateTolerance = 1e-9

func where(s solver.Side, travel float64) string {
	return s.String() + " at " + strconv.FormatFloat(travel, 'g', -1, 64) + ": "
}

// ratesByDifferences returns the derivatives of both toes by travel and steering.
func ratesByDifferences(t *testing.T, x *solver.Axle, in solver.SweepInput) (travel, steer [2][]float64) {
	t.Helper()
	in.By = nil
	steerStep := 0.2
	if x.Gear().Quantity() == solver.AngleQuantity {
		steerStep = 1e-3
	}
	byTravel := func(h float64) [2]solver.Curve {
		moved := in
		moved.Travels = nil
		for _, z := range in.Travels {
			moved.Travels = append(moved.Travels, z+h)
		}
		return swept(t, x, moved)
	}
	bySteer := func(h float64) [2]solver.Curve {
		moved := in
		moved.From.Steer += h
		return swept(t, x, moved)
	}
	return richardson(byTravel, 0.2), richardson(bySteer, steerStep)
}

// richardson returns the derivative of the toes of curves by the number that they
// are a function of.
func richardson(at func(h float64) [2]solver.Curve, h float64) (out [2][]float64) {
	central := func(h float64, s solver.Side, i int, up, down [2]solver.Curve) float64 {
		return float64(up[s].Positions[i].Toe-down[s].Positions[i].Toe) / (2 * h)
	}
	up, down, up2, down2 := at(h), at(-h), at(2*h), at(-2*h)
	for _, s := range solver.Sides {
		for i := range up[s].Positions {
			one, two := central(h, s, i, up, down), central(2*h, s, i, up2, down2)
			out[s] = append(out[s], one+(one-two)/3)
		}
	}
	return out
}

// TestTravelRateMatchesInstant holds the loads' derivative against the velocity's:
// two ways to the same number.
func TestTravelRateMatchesInstant(t *testing.T) {
	for _, file := range []string{"dw07_large_caster.json", "st03_high_tie_rod_on_strut.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, filepath.Join("../testdata/cases", file))
		x := c.Study.candidate(t, c.Study.design(t), "base")
		none, err := x.Tangents(nil)
		if err != nil {
			t.Fatal(err)
		}
		curves := swept(t, x, solver.SweepInput{Travels: []float64{-45, -5, 35}, By: none, Instant: true})
		for _, s := range solver.Sides {
			for i, p := range curves[s].Positions {
				const rounding = 1e-14 // rad/mm
				if got, want := curves[s].ToeTravelRate(i), p.Instant.ToeRate; !(math.Abs(got-want) <= rounding) {
					t.Errorf("%s %s: rate by travel = %.17g, want %.17g", file, s, got, want)
				}
			}
		}
	}
}
