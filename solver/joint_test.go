package solver_test

import (
	"math"
	"path/filepath"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// angleBetween returns the angle between two lines, 0 to 90 deg, in degrees.
func angleBetween(a, b solver.Vec) float64 {
	return math.Acos(math.Abs(r3.Dot(r3.Unit(a), r3.Unit(b)))) * 180 / math.Pi
}

// TestJointsStatic holds the joint angles of the planar car against plane
// geometry.
func TestJointsStatic(t *testing.T) {
	d := planarWishbone(t, yz(350, 250))
	d.StudAxis[solver.Left] = solver.Vec{X: 0.1, Z: 1}
	x := assembled(t, d, nil)
	out := swept(t, x, solver.SweepInput{Travels: []float64{0}, Joints: x.Joints()})
	got := out[solver.Left].Positions[0].Joints
	rod := solver.Vec{Y: 340, Z: 40}
	near(t, "inner, off the rack", got.Inner.Degrees(), angleBetween(rod, solver.Vec{Y: 1}), 1e-9)
	near(t, "outer, off square to the stud", got.Outer.Degrees(), 90-angleBetween(rod, d.StudAxis[solver.Left]), 1e-9)
	k, u := r3.Unit(yz(-40, 270)), r3.Unit(rod)
	near(t, "effort arm", got.EffortArm, math.Abs(tieX*(k.Z*u.Y-k.Y*u.Z)), 1e-9)
}

// TestJointsOfAxle holds the angles of a steering trapezoid: a tie rod square
// across, arms that converge by 18 deg.
func TestJointsOfAxle(t *testing.T) {
	x := assembled(t, trapezoidAxle(t, 1200, 200, 18), nil)
	out := swept(t, x, solver.SweepInput{Travels: []float64{0}, Joints: x.Joints()})
	for _, s := range solver.Sides {
		got := out[s].Positions[0].Joints
		near(t, "transmission", got.Transmission.Degrees(), 108, 1e-9)
		near(t, "effort arm", got.EffortArm, 200*math.Cos(18*math.Pi/180), 1e-9)
		near(t, "outer", got.Outer.Degrees(), 0, 1e-9)
		near(t, "drag link, gear", got.Inner.Degrees(), 0, 1e-9)
		near(t, "drag link, arm", got.DragOuter.Degrees(), 0, 1e-9)
	}
}

// TestJointsMoved recomputes the angles from the places of hardpoints in moved
// and steered positions.
func TestJointsMoved(t *testing.T) {
	for _, tt := range []struct {
		name, file string
		steer      float64
		on         [4]string // knuckle points that carry the stud
	}{
		{"wishbone", "dw05_antidive_skewed_axes.json", 15, [4]string{"lowerBallJoint", "upperBallJoint", "tieRodOuter", "wheelCentre"}},
		{"strut", "st01_hatch_rear_steer.json", -12, [4]string{"lowerBallJoint", "strutLower", "tieRodOuter", "wheelCentre"}},
		{"centre link", "cl01_dw03.json", 0.35, [4]string{"lowerBallJoint", "upperBallJoint", "tieRodOuter", "wheelCentre"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			d := c.Study.design(t)
			x := c.Study.candidate(t, d, "base")
			ws := solver.NewWorkspace()
			var home, now solver.Placed
			if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
				t.Fatal(err)
			}
			if err := x.Place(ws, [2]float64{25, 25}, tt.steer, &now); err != nil {
				t.Fatal(err)
			}
			j := x.Joints()
			if d.Gear.Kind == solver.CentreLink { // in line with the link: its turn is seen
				bar := r3.Sub(home.Gear[3], home.Gear[1])
				j.Inner = [2]solver.Joint{{Axis: bar, Inline: true}, {Axis: bar, Inline: true}}
			}
			out := swept(t, x, solver.SweepInput{Travels: []float64{25}, From: solver.Attitude{Steer: tt.steer}, Joints: j})
			for _, s := range solver.Sides {
				rod := r3.Sub(placed(x, s, &now, "tieRodOuter"), placed(x, s, &now, "tieRodInner"))
				got := out[s].Positions[0].Joints
				socket := d.Gear.Axis
				if d.Gear.Kind == solver.CentreLink {
					socket = r3.Sub(now.Gear[3], now.Gear[1])
				}
				near(t, s.String()+" inner", got.Inner.Degrees(), angleBetween(rod, socket), 1e-7)
				stud := turned(frame(x, tt.on, s, &home), frame(x, tt.on, s, &now), solver.Vec{Z: 1})
				near(t, s.String()+" outer", got.Outer.Degrees(), 90-angleBetween(rod, stud), 1e-7)
			}
		})
	}
}

// placed returns the place of a side's hardpoint by name.
func placed(x *solver.Axle, s solver.Side, p *solver.Placed, name string) solver.Vec {
	for i, h := range x.Design().Kind.SidePoints {
		if h.Name == name {
			return p.Side[s][i]
		}
	}
	panic("no hardpoint " + name)
}

// turned returns the direction v, fixed among the vectors of a, when they have
// become those of b.
func turned(a, b [4]solver.Vec, v solver.Vec) (out solver.Vec) {
	volume := r3.Dot(a[1], r3.Cross(a[2], a[3]))
	for i := 1; i < 4; i++ {
		j, k := i%3+1, (i+1)%3+1
		out = r3.Add(out, r3.Scale(r3.Dot(v, r3.Cross(a[j], a[k]))/volume, b[i]))
	}
	return out
}

// TestJointsAllocate no memory, with a centre link steered.
func TestJointsAllocate(t *testing.T) {
	c := loadCase(t, "../testdata/cases/cl01_dw03.json")
	x := c.Study.candidate(t, c.Study.design(t), "base")
	in := solver.SweepInput{Travels: []float64{-20, 0, 20}, From: solver.Attitude{Steer: 0.3}, Joints: x.Joints()}
	ws := solver.NewWorkspace()
	var out [2]solver.Curve
	if n := testing.AllocsPerRun(10, func() { _ = x.Sweep(ws, &in, &out) }); n != 0 {
		t.Errorf("%g allocations, want 0", n)
	}
}
