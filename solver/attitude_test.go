package solver_test

import (
	"math"
	"strings"
	"testing"

	"toewright/solver"
)

// TestAttitude turns degrees of the body into travels.
func TestAttitude(t *testing.T) {
	x := assembled(t, rillDesign(t), nil) // wheelbase 2700 mm
	half := x.HalfTrack(solver.Left)
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	for _, tt := range []struct {
		name string
		body solver.BodyPosition
		want solver.Attitude
	}{
		{"heave", solver.BodyPosition{Heave: 12, Steer: 3}, solver.Attitude{Heave: 12, Steer: 3}},
		{"left side up", solver.BodyPosition{Roll: solver.Deg(2)}, solver.Attitude{Roll: half * tan(2)}},
		{"nose down", solver.BodyPosition{Heave: 5, Dive: solver.Deg(1.5)}, solver.Attitude{Heave: 5 + 1350*tan(1.5)}},
		{"nose down, rear axle", solver.BodyPosition{Dive: solver.Deg(1.5), PitchLever: -1200}, solver.Attitude{Heave: -1200 * tan(1.5)}},
	} {
		got, err := x.Attitude(tt.body)
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		near(t, tt.name+" heave", got.Heave, tt.want.Heave, 1e-9)
		near(t, tt.name+" roll", got.Roll, tt.want.Roll, 1e-9)
		near(t, tt.name+" steer", got.Steer, tt.want.Steer, 0)
		near(t, tt.name+" roll back", x.BodyRoll(got).Degrees(), tt.body.Roll.Degrees(), 1e-12)
	}
}

// TestAttitudeSide: with the left side up the left wheel droops.
func TestAttitudeSide(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	a, err := x.Attitude(solver.BodyPosition{Roll: solver.Deg(1)})
	if err != nil {
		t.Fatal(err)
	}
	out := swept(t, x, solver.SweepInput{Travels: []float64{0}, From: a})
	if z := out[solver.Left].Positions[0].WheelCentre.Z; !(z < 0) {
		t.Errorf("left wheel at %g mm, want below 0", z)
	}
	if z := out[solver.Right].Positions[0].WheelCentre.Z; !(z > 0) {
		t.Errorf("right wheel at %g mm, want above 0", z)
	}
}

// TestAttitudeRefuses what cannot be turned into travel.
func TestAttitudeRefuses(t *testing.T) {
	d := rillDesign(t)
	d.Wheelbase = 0
	x := assembled(t, d, nil)
	for _, tt := range []struct {
		name string
		body solver.BodyPosition
		key  string
	}{
		{"no wheelbase", solver.BodyPosition{Dive: solver.Deg(1)}, "vehicle.wheelbase"},
		{"on its side", solver.BodyPosition{Roll: solver.Deg(90)}, "roll"},
		{"no number", solver.BodyPosition{Dive: solver.Angle(math.NaN())}, "dive"},
	} {
		if _, err := x.Attitude(tt.body); err == nil || !strings.Contains(err.Error(), tt.key) {
			t.Errorf("%s: error %v, want one that names %s", tt.name, err, tt.key)
		}
	}
}
