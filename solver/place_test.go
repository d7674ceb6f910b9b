package solver_test

import (
	"errors"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// TestPlaceKeepsLinks holds the placed points against the sweep and against the
// lengths of the links.
func TestPlaceKeepsLinks(t *testing.T) {
	for _, tt := range []struct {
		name, file string
		steer      float64
		links      [][2]string
	}{
		{"wishbone", "dw01_saloon_rear_steer.json", 12, [][2]string{{"lowerFrontPivot", "lowerBallJoint"}, {"upperRearPivot", "upperBallJoint"}, {"lowerBallJoint", "upperBallJoint"}, {"tieRodInner", "tieRodOuter"}, {"tieRodOuter", "wheelCentre"}}},
		{"strut", "st01_hatch_rear_steer.json", -9, [][2]string{{"lowerRearPivot", "lowerBallJoint"}, {"lowerBallJoint", "strutLower"}, {"tieRodInner", "tieRodOuter"}}},
		{"multi-link", "ml01_front_virtual_axis.json", 5, [][2]string{{"rods.0.inner", "rods.0.outer"}, {"rods.3.inner", "rods.3.outer"}, {"tieRodInner", "tieRodOuter"}}},
		{"centre link", "cl01_dw03.json", 0.3, [][2]string{{"tieRodInner", "tieRodOuter"}}},
		{"solid axle", "sa01_cross_steer_right_arm.json", 10, [][2]string{{"kingpins.0", "kingpins.1"}, {"kingpins.1", "steeringArmBalls"}, {"kingpins.0", "wheelCentres"}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			d := c.Study.design(t)
			x := c.Study.candidate(t, d, "base")
			ws := solver.NewWorkspace()
			var home, out solver.Placed
			if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
				t.Fatal(err)
			}
			if err := x.Place(ws, [2]float64{25, -10}, tt.steer, &out); err != nil {
				t.Fatal(err)
			}
			for _, s := range solver.Sides {
				for _, l := range tt.links {
					near(t, s.String()+" "+l[0]+"–"+l[1], length(d, &out, s, l), length(d, &home, s, l), 1e-9)
				}
				if !(math.Abs(float64(out.Wheel[s].Toe-home.Wheel[s].Toe)) > 1e-3) {
					t.Errorf("%s wheel does not steer", s)
				}
			}
			near(t, "left travel", out.Wheel[solver.Left].WheelCentre.Z-home.Wheel[solver.Left].WheelCentre.Z, 25, 1e-9)
			near(t, "right travel", out.Wheel[solver.Right].WheelCentre.Z-home.Wheel[solver.Right].WheelCentre.Z, -10, 1e-9)
			for i := range out.Gear[:len(out.Gear)/2] {
				near(t, "gear arm", r3.Norm(r3.Sub(out.Gear[2*i+1], out.Gear[2*i])), r3.Norm(r3.Sub(home.Gear[2*i+1], home.Gear[2*i])), 1e-9)
			}
		})
	}
}

// TestPlaceBeyondReach asks for places where one wheel, or the gear, cannot go.
// TestPlaceSides: a side alone stands as with the other, which stays as it was; an axle is
// placed whole.
func TestPlaceSides(t *testing.T) {
	for _, file := range []string{"dw01_saloon_rear_steer.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, filepath.Join("../testdata/cases", file))
		x := c.Study.candidate(t, c.Study.design(t), "base")
		ws, travel := solver.NewWorkspace(), [2]float64{20, -15}
		var both, one solver.Placed
		if err := x.Place(ws, travel, 0, &both); err != nil {
			t.Fatal(err)
		}
		if err := x.PlaceSides(ws, solver.RightOnly, travel, 0, &one); err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(one.Side[solver.Right], both.Side[solver.Right]) || one.Wheel[solver.Right] != both.Wheel[solver.Right] {
			t.Errorf("%s: the right side alone stands elsewhere", file)
		}
		if placed, axle := one.Side[solver.Left] != nil, both.Common != nil; placed != axle {
			t.Errorf("%s: the left side is placed: %t, want %t", file, placed, axle)
		}
	}
}

func TestPlaceBeyondReach(t *testing.T) {
	for _, tt := range []struct {
		name, file string
		travel     [2]float64
		steer      float64
		side       solver.Side
	}{
		{"left wheel", "dw01_saloon_rear_steer.json", [2]float64{900, 0}, 0, solver.Left},
		{"right wheel", "dw01_saloon_rear_steer.json", [2]float64{0, -900}, 0, solver.Right},
		{"rack", "dw01_saloon_rear_steer.json", [2]float64{}, 900, solver.Left},
		{"solid axle", "sa01_cross_steer_right_arm.json", [2]float64{2000, 2000}, 0, solver.Left},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			err := x.Place(solver.NewWorkspace(), tt.travel, tt.steer, &solver.Placed{})
			var reach *solver.ReachError
			if !errors.As(err, &reach) {
				t.Fatalf("Place = %v, want a ReachError", err)
			}
			if reach.Side != tt.side || reach.Link == "" || !(reach.Share >= 0 && reach.Share < 1) {
				t.Errorf("Place = %+v, want the %s side and a link, short of the whole way", reach, tt.side)
			}
		})
	}
}

func length(d *solver.Design, p *solver.Placed, s solver.Side, link [2]string) float64 {
	var ends [2]solver.Vec
	for i, h := range d.Kind.SidePoints {
		for e, name := range link {
			if h.Name == name {
				ends[e] = p.Side[s][i]
			}
		}
	}
	return r3.Norm(r3.Sub(ends[0], ends[1]))
}
