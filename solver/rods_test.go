package solver_test

import (
	"math"
	"path/filepath"
	"testing"

	"toewright/solver"
)

// builtCars are cars of every kind, as the file has them and with parts and
// setpoints changed.
var builtCars = []struct {
	name, file string
	changed    map[string]float64
	hold       solver.Hold
}{
	{"wishbone", "dw01_saloon_rear_steer.json", nil, solver.HoldAll},
	{"wishbone changed", "dw07_large_caster.json",
		map[string]float64{"tieRodOuterHeight": 6, "steeringArmLength": 5, "caster": 11, "rideHeight": -20, "toe": 0.3}, solver.HoldAll},
	{"wishbone, nothing re-set", "dw05_antidive_skewed_axes.json", map[string]float64{"tieRodOuterHeight": -4}, solver.HoldNone},
	{"strut changed", "st03_high_tie_rod_on_strut.json", map[string]float64{"camber": -1.5, "caster": 4, "steeringArmLength": -6}, solver.HoldAll},
	{"strut, caster re-set", "st01_hatch_rear_steer.json", nil, solver.HoldToe | solver.HoldCaster},
	{"multi-link", "ml01_front_virtual_axis.json", map[string]float64{"tieRodOuterHeight": 6, "camber": -1}, solver.HoldAll},
	{"solid axle", "sa01_cross_steer_right_arm.json", map[string]float64{"dragLinkOuterHeight": -8, "tieRodOuterHeight": 5, "caster": 6}, solver.HoldAll},
	{"solid axle, nothing re-set", "sa01_cross_steer_right_arm.json", nil, solver.HoldNone},
	{"centre link", "cl01_dw03.json", nil, solver.HoldAll},
}

// TestBuiltCarIsTheOneDrawn: with the rods of the car as drawn, and nothing else
// off, a car as built is that car.
func TestBuiltCarIsTheOneDrawn(t *testing.T) {
	for _, tt := range builtCars {
		t.Run(tt.name, func(t *testing.T) {
			a, cs := builder(t, tt.file, tt.changed)
			drawn, err := a.Assemble(cs, tt.hold)
			if err != nil {
				t.Fatal(err)
			}
			rods := drawn.Rods()
			built, err := a.AssembleBuilt(solver.BothSides, cs, tt.hold, &rods)
			if err != nil {
				t.Fatal(err)
			}
			in := solver.SweepInput{Travels: []float64{-40, 0, 35}}
			want, got := swept(t, drawn, in), swept(t, built, in)
			for _, s := range solver.Sides {
				for i := range in.Travels {
					// 1e-9 deg is what a static position is solved to, some times over.
					near(t, s.String()+" toe", got[s].Positions[i].Toe.Degrees(), want[s].Positions[i].Toe.Degrees(), 1e-9)
				}
			}
		})
	}
}

// TestBuiltToeRates compares the derivatives of the toe of cars as built, by every
// parameter and the rods' own lengths among them, with Richardson's differences.
func TestBuiltToeRates(t *testing.T) {
	for _, tt := range builtCars {
		t.Run(tt.name, func(t *testing.T) {
			a, cs := builder(t, tt.file, tt.changed)
			drawn, err := a.Assemble(cs, tt.hold)
			if err != nil {
				t.Fatal(err)
			}
			rods := drawn.Rods()
			built := func(cs []solver.Change) (*solver.Axle, error) {
				return a.AssembleBuilt(solver.BothSides, cs, tt.hold, &rods)
			}
			checkRatesOf(t, built, tt.hold&^solver.HoldToe, cs, solver.SweepInput{Travels: []float64{-40, 0, 30}})
		})
	}
}

// TestRodLengthTurnsTheWheelOnItsArm: about a vertical steering axis a rod dL longer
// at right angles to an arm of length r turns the wheel by asin(dL/r) but for what
// the rod leans on the way. Behind the axle a longer rod is toe-in.
func TestRodLengthTurnsTheWheelOnItsArm(t *testing.T) {
	const arm, rod = 125.0, 330.0
	d := design(t, "double-wishbone", []solver.Vec{
		{X: 150, Y: 300, Z: 180}, {X: -150, Y: 300, Z: 180}, {Y: 700, Z: 180},
		{X: 150, Y: 350, Z: 440}, {X: -150, Y: 350, Z: 440}, {Y: 700, Z: 440},
		{X: -arm, Y: 700, Z: 260}, {X: -arm, Y: 700 - rod, Z: 260}, {Y: 780, Z: 310},
	}, 0, 0)
	drawn := assembled(t, d, nil)
	rods := drawn.Rods()
	near(t, "rod", rods.Tie[solver.Left], rod, 1e-12)
	a, err := solver.NewAssembler(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, hold := range []solver.Hold{solver.HoldAll, solver.HoldNone} {
		for _, dl := range []float64{-2, -0.1, 0.1, 2} {
			x, err := a.AssembleBuilt(solver.BothSides, []solver.Change{change(t, d, "tieRodLength@left", dl)}, hold, &rods)
			if err != nil {
				t.Fatal(err)
			}
			toe := swept(t, x, solver.SweepInput{Travels: []float64{0}})
			// The ball's sideways move is dL but for the second order: it goes
			// fore by dL²/2r, and the rod leans over by as much.
			lean := dl * dl / (2 * arm)
			near(t, "left toe", float64(toe[solver.Left].Positions[0].Toe), math.Asin(dl/arm), lean*lean/(2*rod*arm)+1e-9)
			near(t, "right toe", float64(toe[solver.Right].Positions[0].Toe), 0, 1e-12)
		}
	}
}

// TestRodLengthWithAndWithoutToe: where toe is re-set a rod's own length does nothing, and
// where it floats the length counts from that of the car as measured.
func TestRodLengthWithAndWithoutToe(t *testing.T) {
	a, cs := builder(t, "dw01_saloon_rear_steer.json", map[string]float64{"tieRodLength": 1.5})
	for _, tt := range []struct {
		name string
		hold solver.Hold
		want float64 // mm longer than as measured
	}{
		{"re-set", solver.HoldAll, 0},
		{"floating", solver.HoldCamber | solver.HoldCaster, 1.5},
	} {
		x, err := a.Assemble(cs, tt.hold)
		if err != nil {
			t.Fatal(err)
		}
		base, err := a.Assemble(nil, tt.hold)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range solver.Sides {
			near(t, tt.name+", "+s.String(), x.TieRodLength(s)-base.TieRodLength(s), tt.want, 1e-8)
		}
	}
}

// builder returns an assembler of a case's car and changes in mm or degrees.
func builder(t testing.TB, file string, changed map[string]float64) (*solver.Assembler, []solver.Change) {
	t.Helper()
	c := loadCase(t, filepath.Join("../testdata/cases", file))
	d := c.Study.design(t)
	a, err := solver.NewAssembler(d)
	if err != nil {
		t.Fatal(err)
	}
	var cs []solver.Change
	for key, v := range changed {
		cs = append(cs, change(t, d, key, v))
	}
	return a, cs
}
