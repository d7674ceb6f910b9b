package solver_test

import (
	"math"
	"path/filepath"
	"testing"

	"toewright/solver"
)

// TestToeRates compares the derivatives of every kind's toe by every parameter
// with central differences of re-assembled cars, Richardson's extrapolation
// applied once.
func TestToeRates(t *testing.T) {
	for _, tt := range []struct {
		name, file string
		steer      float64
		motion     solver.Motion
		changed    map[string]float64
	}{
		{"wishbone", "dw01_saloon_rear_steer.json", 0, solver.BothWheels, nil},
		{"wishbone steered", "dw05_antidive_skewed_axes.json", 12, solver.BothWheels, nil},
		{"wishbone changed", "dw07_large_caster.json", 0, solver.BothWheels,
			map[string]float64{"lowerBallJointHeight": -10, "tieRodOuterHeight": 6, "steeringArmLength": 5, "steeringArmOffset": -3, "caster": 11, "rideHeight": -20}},
		{"wishbone, tie rod exchanged", "dw07_large_caster.json", 0, solver.BothWheels,
			map[string]float64{"tieRodOuterHeight": 6, "tieRodInnerHeight": -4, "steeringArmLength": 5, "upperBallJoint.y": 2}},
		{"strut", "st01_hatch_rear_steer.json", 10, solver.BothWheels, nil},
		{"strut changed", "st03_high_tie_rod_on_strut.json", 0, solver.BothWheels,
			map[string]float64{"camber": -1.5, "caster": 4, "steeringArmLength": -6, "lowerBallJointHeight": 8}},
		{"strut, tie rod exchanged", "st03_high_tie_rod_on_strut.json", 0, solver.BothWheels,
			map[string]float64{"tieRodInnerHeight": 8, "steeringArmLength": -6, "strutTop.x": 3}},
		{"multi-link", "ml01_front_virtual_axis.json", -10, solver.BothWheels, nil},
		{"multi-link changed", "ml01_front_virtual_axis.json", 0, solver.BothWheels,
			map[string]float64{"camber": -1, "tieRodOuterHeight": 6, "steeringArmLength": 4, "rideHeight": -15}},
		{"solid axle", "sa01_cross_steer_right_arm.json", 15, solver.RollMotion, nil},
		{"solid axle changed", "sa01_cross_steer_right_arm.json", 0, solver.LeftWheel,
			map[string]float64{"caster": 6, "dragLinkOuterHeight": -8, "tieRodOuterHeight": 5, "rideHeight": 20, "steeringArmLength": 4}},
		{"solid axle, rods exchanged", "sa01_cross_steer_right_arm.json", 0, solver.BothWheels,
			map[string]float64{"dragLinkOuterHeight": -8, "tieRodOuterHeight": 5}},
		{"centre link steered", "cl01_dw03.json", 0.2, solver.BothWheels, nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			d := c.Study.design(t)
			var base []solver.Change
			for key, v := range tt.changed {
				base = append(base, change(t, d, key, v))
			}
			in := solver.SweepInput{Travels: []float64{-40, -15, 0, 30}, Motion: tt.motion, From: solver.Attitude{Steer: tt.steer}}
			checkRates(t, d, base, in)
		})
	}
}

// maker assembles a car with changes.
type maker func(changes []solver.Change) (*solver.Axle, error)

// checkRates is checkRatesOf of cars whose setpoints are all re-solved.
func checkRates(t *testing.T, d *solver.Design, base []solver.Change, in solver.SweepInput) {
	t.Helper()
	a, err := solver.NewAssembler(d)
	if err != nil {
		t.Fatal(err)
	}
	assemble := func(cs []solver.Change) (*solver.Axle, error) { return a.Assemble(cs, solver.HoldAll) }
	checkRatesOf(t, assemble, solver.HoldAll, base, in)
}

// checkRatesOf compares the rates of toe of the car that a makes with base, by
// every parameter of the registry but setpoints that float, with differences.
func checkRatesOf(t *testing.T, a maker, hold solver.Hold, base []solver.Change, in solver.SweepInput) {
	t.Helper()
	x, err := a(base)
	if err != nil {
		t.Fatal(err)
	}
	by := everyParameter(x.Design(), hold)
	tan, err := x.Tangents(by)
	if err != nil {
		t.Fatal(err)
	}
	with := in
	with.By = tan
	var out [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &with, &out); err != nil {
		t.Fatal(err)
	}
	for k, p := range by {
		want, scale := toeDifferences(t, a, base, p, in)
		for _, s := range solver.Sides {
			for i := range in.Travels {
				got := out[s].ToeRate(i, k)
				if !(math.Abs(got-want[s][i]) <= 2e-9*scale) {
					t.Errorf("%s, %s, travel %g: toe rate %.12g, differences give %.12g", p.Key(), s, in.Travels[i], got, want[s][i])
				}
			}
		}
	}
}

// everyParameter returns the parameters of the registry but setpoints that float, on both
// sides and on one.
func everyParameter(d *solver.Design, hold solver.Hold) (by []solver.Change) {
	for _, p := range solver.Parameters(d) {
		if held, err := solver.ParseHold([]string{p.Key}); err == nil && held&hold == 0 {
			continue // to set it would hold it
		}
		by = append(by, solver.Change{Parameter: p})
		if p.Sided() {
			by = append(by, solver.Change{Parameter: p, Sides: solver.RightOnly})
		}
	}
	return by
}

// toeDifferences returns the derivative of the toes by p, by Richardson's rule
// on central differences, and the scale of its error: rounding in a solved toe,
// some 1e-13 rad, over the step.
func toeDifferences(t *testing.T, a maker, base []solver.Change, p solver.Change, in solver.SweepInput) ([2][]float64, float64) {
	h := 0.2
	if p.Parameter.Quantity == solver.AngleQuantity {
		h = 2e-3
	}
	one, two := centralToes(t, a, base, p, in, h), centralToes(t, a, base, p, in, 2*h)
	for s := range one {
		for i := range one[s] {
			one[s][i] += (one[s][i] - two[s][i]) / 3
		}
	}
	scale := 1.0
	if p.Parameter.Quantity == solver.AngleQuantity {
		scale = 300 // mm of lever arm
	}
	return one, scale
}

func centralToes(t *testing.T, a maker, base []solver.Change, p solver.Change, in solver.SweepInput, h float64) [2][]float64 {
	up, down := toesAt(t, a, base, p, in, h), toesAt(t, a, base, p, in, -h)
	for s := range up {
		for i := range up[s] {
			up[s][i] = (up[s][i] - down[s][i]) / (2 * h)
		}
	}
	return up
}

func toesAt(t *testing.T, a maker, base []solver.Change, p solver.Change, in solver.SweepInput, h float64) [2][]float64 {
	t.Helper()
	p.Value = h
	if p.Parameter.Absolute {
		p.Value += settingNow(t, a, base, p)
	}
	x, err := a(append(append([]solver.Change(nil), base...), p))
	if err != nil {
		t.Fatal(err)
	}
	var out [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &in, &out); err != nil {
		t.Fatal(err)
	}
	var toes [2][]float64
	for _, s := range solver.Sides {
		for _, q := range out[s].Positions {
			toes[s] = append(toes[s], float64(q.Toe))
		}
	}
	return toes
}

// settingNow returns what an absolute parameter stands at.
func settingNow(t *testing.T, a maker, base []solver.Change, p solver.Change) float64 {
	t.Helper()
	x, err := a(base)
	if err != nil {
		t.Fatal(err)
	}
	var out [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: []float64{0}}, &out); err != nil {
		t.Fatal(err)
	}
	q, r := out[solver.Left].Positions[0], out[solver.Right].Positions[0]
	switch p.Parameter.Key {
	case "toe":
		return float64(q.Toe)
	case "camber":
		return float64(q.Camber)
	}
	if x.Solid() {
		return float64(q.Caster+r.Caster) / 2
	}
	return float64(q.Caster)
}
