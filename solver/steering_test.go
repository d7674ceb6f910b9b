package solver_test

import (
	"errors"
	"math"
	"path/filepath"
	"testing"

	"toewright/solver"
)

// TestTrapezoid compares a solid axle's steering with the closed form of the plane
// trapezoid of R.N. Jazar, Vehicle Dynamics, ch. 7 (equation from memory,
// recomputed two ways): pivot distance and arm in m, arm angle in degrees.
func TestTrapezoid(t *testing.T) {
	inner := []float64{5, 10, 20, 30, 40}
	for _, tt := range []struct {
		w, d, b float64
		want    []float64
	}{
		{1.2, 0.20, 18, []float64{4.84616372, 9.39611303, 17.62480787, 24.62309800, 30.20316082}},
		{1.2, 0.15, 10, []float64{4.92057040, 9.68408534, 18.72689275, 27.04553129, 34.46095042}},
		{2.4, 0.40, 10, []float64{4.91936244, 9.67927049, 18.70674612, 26.99495881, 34.35448178}},
	} {
		x := assembled(t, trapezoidAxle(t, 1000*tt.w, 1000*tt.d, tt.b), nil)
		ws := solver.NewWorkspace()
		for i, deg := range inner {
			p, err := x.SteerFor(ws, solver.Left, solver.Deg(deg), solver.Attitude{})
			if err != nil {
				t.Fatal(err)
			}
			turn := p.Turn()
			near(t, "inner", turn.Inner.Degrees(), deg, 1e-10)
			near(t, "outer", turn.Outer.Degrees(), tt.want[i], 1e-8)
		}
	}
}

// steerCases are gears and suspensions, with inputs in mm or radians.
var steerCases = []struct {
	name, file string
	inputs     []float64
}{
	{"rack", "dw05_antidive_skewed_axes.json", []float64{-40, -15, 0, 10, 30}},
	{"strut", "st01_hatch_rear_steer.json", []float64{-40, -15, 0, 10, 30}},
	{"multi-link", "ml01_front_virtual_axis.json", []float64{-20, 0, 20}},
	{"centre link", "cl01_dw03.json", []float64{-0.5, -0.2, 0, 0.3, 0.5}},
	{"drag link", "sa01_cross_steer_right_arm.json", []float64{-40, 0, 25}},
}

// TestSteerAgainstSweep: a wheel steered at a height is the wheel brought to that
// height at that steer.
func TestSteerAgainstSweep(t *testing.T) {
	for _, tt := range steerCases {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			at := solver.Attitude{Heave: 12, Roll: 4, Steer: tt.inputs[0]} // a steer that is not to count
			in := solver.SteerInput{Inputs: tt.inputs, At: at, Joints: x.Joints()}
			var out solver.SteerCurve
			if err := x.Steer(solver.NewWorkspace(), &in, &out); err != nil {
				t.Fatal(err)
			}
			if len(out.Points) != len(tt.inputs) {
				t.Fatalf("%d points of %d; reach %+v", len(out.Points), len(tt.inputs), out.Reach)
			}
			for _, p := range out.Points {
				from := at
				from.Steer = p.Input
				want := swept(t, x, solver.SweepInput{Travels: []float64{0}, From: from, Joints: x.Joints(), Ground: true})
				for _, s := range solver.Sides {
					got, want := p.Position[s], want[s].Positions[0]
					near(t, "toe", got.Toe.Degrees(), want.Toe.Degrees(), 1e-9)
					near(t, "camber", got.Camber.Degrees(), want.Camber.Degrees(), 1e-9)
					near(t, "trail", got.Trail, want.Trail, 1e-7)
					near(t, "inner joint", got.Joints.Inner.Degrees(), want.Joints.Inner.Degrees(), 1e-9)
					near(t, "outer joint", got.Joints.Outer.Degrees(), want.Joints.Outer.Degrees(), 1e-9)
				}
			}
		})
	}
}

// TestSteerRates compares the rates of the wheel angles with differences.
func TestSteerRates(t *testing.T) {
	for _, tt := range steerCases {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			h := 0.5
			if x.Gear().Quantity() == solver.AngleQuantity {
				h = 0.005
			}
			for _, u := range []float64{tt.inputs[0], 0, tt.inputs[len(tt.inputs)-1]} {
				in := solver.SteerInput{Inputs: []float64{u - 2*h, u - h, u, u + h, u + 2*h}}
				var out solver.SteerCurve
				if err := x.Steer(solver.NewWorkspace(), &in, &out); err != nil {
					t.Fatal(err)
				}
				for _, s := range solver.Sides {
					a := func(i int) float64 { return float64(out.Points[i].Wheel[s]) }
					want := (a(0) - 8*a(1) + 8*a(3) - a(4)) / (12 * h)
					near(t, s.String()+" rate", out.Points[2].Rate[s], want, 2e-8*math.Abs(want))
				}
			}
		})
	}
}

// TestSteerMirror: a symmetric rack car steers to the right as to the left.
func TestSteerMirror(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	var out solver.SteerCurve
	if err := x.Steer(solver.NewWorkspace(), &solver.SteerInput{Inputs: []float64{-25, 0, 25}}, &out); err != nil {
		t.Fatal(err)
	}
	a, b := out.Points[0], out.Points[2]
	near(t, "left and right", float64(a.Wheel[solver.Left]), -float64(b.Wheel[solver.Right]), 1e-12)
	near(t, "right and left", float64(a.Wheel[solver.Right]), -float64(b.Wheel[solver.Left]), 1e-12)
	near(t, "straight ahead", float64(out.Points[1].Wheel[solver.Left]), 0, 0)
	near(t, "mean rate", a.MeanRate(), b.MeanRate(), 1e-12)
	if a.Turn().ToLeft == b.Turn().ToLeft {
		t.Error("both turns are to one side")
	}
}

// TestSteerLocks finds the lock that a sweep at that steer cannot pass.
func TestSteerLocks(t *testing.T) {
	for _, file := range []string{"dw05_antidive_skewed_axes.json", "sa01_cross_steer_right_arm.json", "cl01_dw03.json"} {
		t.Run(file, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			step, n := 5.0, 100
			if x.Gear().Quantity() == solver.AngleQuantity {
				step = 0.05
			}
			in := solver.SteerInput{}
			for k := -n; k <= n; k++ {
				in.Inputs = append(in.Inputs, float64(k)*step)
			}
			var out solver.SteerCurve
			if err := x.Steer(solver.NewWorkspace(), &in, &out); err != nil {
				t.Fatal(err)
			}
			for _, e := range []solver.SteerEnd{out.Reach.Lo, out.Reach.Hi} {
				if !e.Locked || e.Unsure || e.Link == "" {
					t.Fatalf("no lock found: %+v", e)
				}
				if !reaches(x, e.Input*(1-1e-6)) || reaches(x, e.Input*(1+1e-6)) {
					t.Errorf("lock %+v is not where a sweep finds it", e)
				}
			}
			last := out.Points[len(out.Points)-1].Input
			if !(last < out.Reach.Hi.Input && last+step >= out.Reach.Hi.Input) {
				t.Errorf("last point at %g, lock at %g", last, out.Reach.Hi.Input)
			}
		})
	}
}

func reaches(x *solver.Axle, steer float64) bool {
	var out [2]solver.Curve
	in := solver.SweepInput{Travels: []float64{0}, From: solver.Attitude{Steer: steer}}
	return x.Sweep(solver.NewWorkspace(), &in, &out) == nil
}

// TestSteerFor turns either wheel to either side, at an attitude.
func TestSteerFor(t *testing.T) {
	for _, tt := range steerCases {
		c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
		x := c.Study.candidate(t, c.Study.design(t), "base")
		ws := solver.NewWorkspace()
		for _, s := range solver.Sides {
			for _, deg := range []float64{-20, -1, 0, 7, 20} {
				p, err := x.SteerFor(ws, s, solver.Deg(deg), solver.Attitude{Heave: -8})
				if err != nil {
					t.Fatalf("%s: %v", tt.name, err)
				}
				near(t, tt.name+" "+s.String(), p.Wheel[s].Degrees(), deg, 1e-10)
			}
		}
	}
}

// TestSteerForLock says how far a wheel turns that cannot turn as far as asked.
func TestSteerForLock(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	_, err := x.SteerFor(solver.NewWorkspace(), solver.Left, solver.Deg(85), solver.Attitude{})
	var lock *solver.SteerLockError
	if !errors.As(err, &lock) {
		t.Fatalf("error %v, want a SteerLockError", err)
	}
	if !(lock.Lock.Degrees() > 30 && lock.Lock.Degrees() < 85) || lock.Link != "tie rod" {
		t.Errorf("lock %+v, want one of the tie rod between 30 and 85 deg", lock)
	}
	// The greatest angle is reached where it is said to be.
	p, err := x.SteerFor(solver.NewWorkspace(), solver.Left, lock.Lock-1e-3, solver.Attitude{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "just short of it", float64(p.Wheel[solver.Left]), float64(lock.Lock)-1e-3, 1e-9)
}

// TestSteerAllocates no memory where its output has room.
func TestSteerAllocates(t *testing.T) {
	for _, tt := range steerCases {
		c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
		x := c.Study.candidate(t, c.Study.design(t), "base")
		in := solver.SteerInput{Inputs: tt.inputs, Joints: x.Joints()}
		ws := solver.NewWorkspace()
		var out solver.SteerCurve
		if n := testing.AllocsPerRun(10, func() { _ = x.Steer(ws, &in, &out) }); n != 0 {
			t.Errorf("%s: %g allocations, want 0", tt.name, n)
		}
	}
}
