package solver_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// TestArmReport reads the arms of candidates of every kind, on both sides: what
// was changed is what is reported, whatever setpoints move with it.
func TestArmReport(t *testing.T) {
	for _, file := range []string{"dw05_antidive_skewed_axes.json", "st01_hatch_rear_steer.json", "ml01_front_virtual_axis.json", "sa01_cross_steer_right_arm.json"} {
		t.Run(file, func(t *testing.T) {
			c := loadCase(t, "../testdata/cases/"+file)
			d := c.Study.design(t)
			base := assembled(t, d, nil)
			x := assembled(t, d, map[string]float64{"tieRodOuterHeight": -12, "steeringArmLength": 5, "rideHeight": -15, "caster": 9})
			for _, s := range solver.Sides {
				r := x.ArmReport(base, s, nil)
				near(t, "up", r.Car.Z, -12, 1e-9)
				near(t, "along the stud", r.AlongStud, -12, 1e-9)
				near(t, "level", math.Hypot(r.Car.X, r.Car.Y), 5, 1e-9)
				near(t, "across the stud", r.AcrossStud, 5, 1e-9)
				same := base.ArmReport(base, s, nil)
				near(t, "unchanged", r3.Norm(same.Car), 0, 0)
			}
		})
	}
}

// TestArmReportLength: an arm made 5 mm longer along its line is 5 mm longer.
func TestArmReportLength(t *testing.T) {
	d := rillDesign(t)
	base, x := assembled(t, d, nil), assembled(t, d, map[string]float64{"steeringArmLength": 5})
	for _, s := range solver.Sides {
		r := x.ArmReport(base, s, nil)
		near(t, "length", r.Length.Change(), 5, 1e-9)
		// Steering axis at the ball's height by hand.
		at := between(solver.Vec{X: 13, Y: 737, Z: -145}, solver.Vec{X: -25, Y: 680, Z: 162}, (-88.0+145)/(162+145), 0)
		near(t, "original length", r.Length.Before, math.Hypot(-137-at.X, 690-at.Y), 1e-9)
		near(t, "original tie rod", r.TieRod.Before, r3.Norm(solver.Vec{X: 13, Y: 310, Z: -50}), 1e-9)
		near(t, "link lengths", r.TieRod.After, tieRodOf(t, x, s), 1e-9)
	}
}

func tieRodOf(t *testing.T, x *solver.Axle, s solver.Side) float64 {
	t.Helper()
	var p solver.Placed
	if err := x.Place(solver.NewWorkspace(), [2]float64{}, 0, &p); err != nil {
		t.Fatal(err)
	}
	return r3.Norm(r3.Sub(placed(x, s, &p, "tieRodOuter"), placed(x, s, &p, "tieRodInner")))
}

// TestArmReportOriginal places the arm of the car as measured by hand: at the ball,
// and where the line through both ball joints passes the ball's height.
func TestArmReportOriginal(t *testing.T) {
	d := rillDesign(t)
	d.StudAxis = [2]solver.Vec{{X: 0.1, Y: -0.2, Z: 1}, {X: 0.1, Y: 0.2, Z: 1}}
	base, x := assembled(t, d, nil), assembled(t, d, map[string]float64{"tieRodOuterHeight": -10})
	low, high := solver.Vec{X: 13, Y: 737, Z: -145}, solver.Vec{X: -25, Y: 680, Z: 162}
	want := solver.ArmPlace{
		Hole: solver.Vec{X: -137, Y: 690, Z: -88}, Foot: between(low, high, (-88.0+145)/(162+145), 0),
		Axis: r3.Unit(r3.Sub(high, low)), Stud: r3.Unit(d.StudAxis[solver.Left]),
	}
	for _, s := range solver.Sides {
		got := x.ArmReport(base, s, nil).Original
		for _, tt := range []struct {
			name      string
			got, want solver.Vec
		}{
			{"hole", got.Hole, want.Hole}, {"foot", got.Foot, want.Foot}, {"axis", got.Axis, want.Axis}, {"stud", got.Stud, want.Stud},
		} {
			if s == solver.Right {
				tt.want = mirrored(tt.want)
			}
			near(t, s.String()+" "+tt.name, r3.Norm(r3.Sub(tt.got, tt.want)), 0, 1e-9)
		}
	}
}

// TestArmReportFace splits a drop of 10 mm on a face that leans outward by 5 deg.
func TestArmReportFace(t *testing.T) {
	sin, cos := math.Sincos(5 * math.Pi / 180)
	d := rillDesign(t)
	base, x := assembled(t, d, nil), assembled(t, d, map[string]float64{"tieRodOuterHeight": -10})
	for _, s := range solver.Sides {
		face := solver.ArmFace{Normal: solver.Vec{Y: sin, Z: -cos}, Pattern: solver.Vec{X: 1}}
		if s == solver.Right {
			face.Normal = mirrored(face.Normal)
		}
		r := x.ArmReport(base, s, &face)
		near(t, "along the normal", r.Face.X, 10*cos, 1e-9)
		near(t, "along the pattern", r.Face.Y, 0, 1e-9)
		near(t, "across", math.Abs(r.Face.Z), 10*sin, 1e-9)
		near(t, "whole", r3.Norm(r.Face), 10, 1e-9)
	}
}

// TestFaceAxes: the axes of any face are square to each other and of length 1, the first its
// normal, be it level or upright, and its bolts in it, in line with the normal or none; those of a
// right face mirror the left one's.
func TestFaceAxes(t *testing.T) {
	ways := []solver.Vec{{X: 1}, {X: -2}, {Y: 1}, {Y: -0.5}, {Z: 1}, {Z: -40}, {X: 1, Z: 1e-9}, {X: -1, Y: 0.1, Z: 0.05}, {X: 3, Y: -2, Z: 7}}
	for _, normal := range ways {
		for _, pattern := range append(ways, solver.Vec{}, r3.Scale(35, normal)) {
			face := solver.ArmFace{Normal: normal, Pattern: pattern}
			a := face.Axes(solver.Left)
			near(t, "normal", r3.Norm(r3.Sub(a[0], r3.Unit(normal))), 0, 1e-12)
			for i := range a {
				for j := range a {
					want := 0.0
					if i == j {
						want = 1
					}
					if got := r3.Dot(a[i], a[j]); !(math.Abs(got-want) <= 1e-9) {
						t.Fatalf("normal %v, bolts along %v: axes %v, %d by %d is %g", normal, pattern, a, i, j, got)
					}
				}
			}
			right := solver.ArmFace{Normal: mirrored(normal), Pattern: mirrored(pattern)}
			if got := right.Axes(solver.Right); got != a {
				t.Errorf("normal %v, bolts along %v: right %v, left %v", normal, pattern, got, a)
			}
		}
	}
}

// TestArmReportMirror reads a change of both sides alike.
func TestArmReportMirror(t *testing.T) {
	c := loadCase(t, "../testdata/cases/dw05_antidive_skewed_axes.json")
	d := c.Study.design(t)
	d.StudAxis = [2]solver.Vec{{X: 0.1, Y: -0.2, Z: 1}, {X: 0.1, Y: 0.2, Z: 1}}
	base, x := assembled(t, d, nil), assembled(t, d, map[string]float64{"tieRodOuterHeight": 8, "steeringArmOffset": 4, "caster": 8})
	l, r := x.ArmReport(base, solver.Left, nil), x.ArmReport(base, solver.Right, nil)
	near(t, "car", r3.Norm(r3.Sub(l.Car, r.Car)), 0, 1e-9)
	near(t, "tie rod", l.TieRod.Change(), r.TieRod.Change(), 1e-9)
	near(t, "along the stud, offset left out", l.AlongStud-8, r3.Dot(l.Car, r3.Unit(d.StudAxis[0]))-8, 1e-9)
}
