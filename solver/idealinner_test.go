package solver_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// TestOuterPathTextbook compares with the path of the outer ball of Rill's example
// at zero toe (recomputed from the published coordinates).
func TestOuterPathTextbook(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	want := []solver.Vec{
		{X: -136.986276, Y: 678.960701, Z: -135.121373},
		{X: -137, Y: 690, Z: -88},
		{X: -136.849017, Y: 693.693483, Z: -41.939991},
	}
	for _, s := range solver.Sides {
		got, err := x.OuterPath(solver.NewWorkspace(), s, []float64{-50, 0, 50}, nil)
		if err != nil {
			t.Fatal(err)
		}
		for i, w := range want {
			if s == solver.Right {
				w = mirrored(w)
			}
			near(t, s.String(), r3.Norm(r3.Sub(got[i], w)), 0, 1e-6)
		}
	}
}

// TestIdealInnerTextbook compares with the sphere through that path, -50 to 50 mm
// by 10, with its centre's x held and its static point kept: (377.9915, -39.7491)
// and 1.16 µm (recomputed).
func TestIdealInnerTextbook(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	travels, _ := solver.Grid(50, 50, 10)
	got, ok := x.IdealInner(solver.NewWorkspace(), solver.Left, travels, nil)
	if !ok {
		t.Fatal("no centre")
	}
	near(t, "y", got.At.Y, 377.9915, 1e-4)
	near(t, "z", got.At.Z, -39.7491, 1e-4)
	near(t, "x", got.At.X, -150, 0)
	near(t, "rms, µm", got.RMS*1000, 1.16, 0.005)
	near(t, "move", r3.Norm(r3.Sub(got.Move, solver.Vec{Y: got.At.Y - 380, Z: got.At.Z + 38})), 0, 1e-9)
}

// TestOuterPathFollowsRod: where the toe wanted is the toe that the car has, the
// path is that of its own ball.
func TestOuterPathFollowsRod(t *testing.T) {
	travels := []float64{-30, -10, 0, 15, 30}
	for _, file := range []string{"dw05_antidive_skewed_axes.json", "st01_hatch_rear_steer.json", "ml01_front_virtual_axis.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, "../testdata/cases/"+file)
		x := c.Study.candidate(t, c.Study.design(t), "base")
		side, ball := solver.Left, "tieRodOuter"
		if x.Solid() {
			side = solver.Right // the one that its drag link pulls
		}
		curve := swept(t, x, solver.SweepInput{Travels: travels})[side].Positions
		own := func(z float64) solver.Angle {
			for _, p := range curve {
				if p.Travel == z {
					return p.Toe - curve[2].Toe
				}
			}
			t.Fatalf("%s: travel %g not swept", file, z)
			return 0
		}
		path, err := x.OuterPath(solver.NewWorkspace(), side, travels, own)
		if err != nil {
			t.Fatal(err)
		}
		for i, z := range travels {
			var p solver.Placed
			if err := x.Place(solver.NewWorkspace(), [2]float64{z, z}, 0, &p); err != nil {
				t.Fatal(err)
			}
			var want solver.Vec
			if x.Solid() {
				want = p.Common[len(p.Common)-1]
			} else {
				want = placed(x, side, &p, ball)
			}
			near(t, file, r3.Norm(r3.Sub(path[i], want)), 0, 1e-8)
		}
	}
}

// TestIdealInnerStraight finds no centre of a path of two points.
func TestIdealInnerStraight(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	if got, ok := x.IdealInner(solver.NewWorkspace(), solver.Left, []float64{0, 10}, nil); ok {
		t.Errorf("a centre of two points: %+v", got)
	}
}

// TestOuterPathOfAnAxle: there is one drag link, whichever side is asked for, and its ball
// stands at static height where the file has it, whatever toe each wheel has there.
func TestOuterPathOfAnAxle(t *testing.T) {
	d := straightAxle(t)
	d.Toe = [2]solver.Angle{solver.Deg(0.3), solver.Deg(-0.2)}
	x := assembled(t, d, nil)
	var paths [2][]solver.Vec
	for _, s := range solver.Sides {
		var err error
		if paths[s], err = x.OuterPath(solver.NewWorkspace(), s, []float64{-20, 0, 20}, nil); err != nil {
			t.Fatal(err)
		}
		near(t, s.String()+": off its place in the file, mm", r3.Norm(r3.Sub(paths[s][1], d.Common[9])), 0, 1e-9)
	}
	for i, p := range paths[solver.Left] {
		near(t, "between the paths asked for on the left and the right, mm", r3.Norm(r3.Sub(p, paths[solver.Right][i])), 0, 1e-9)
	}
}
