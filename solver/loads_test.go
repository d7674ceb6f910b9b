package solver_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// boltedArms returns springs, faces and a stud for a design. Geometry invented.
func boltedArms(d *solver.Design, on string) *solver.LoadParts {
	p, _ := springsOn(d, on)
	p.Stud = &solver.Stud{Diameter: 14, Height: 22}
	p.Stiffness = softly(seeded(70), d)
	for _, s := range solver.Sides {
		w, out := wheelOf(d, s), math.Copysign(1, wheelOf(d, s).Y)
		at := func(x, y, z float64) solver.Vec { return solver.Vec{X: w.X + x, Y: w.Y + out*y, Z: w.Z + z} }
		p.Faces[s] = &solver.BoltedFace{
			Point: at(-35, -70, -55), Normal: solver.Vec{X: -1, Y: out * 0.08, Z: 0.05},
			Bolts: []solver.Vec{at(-35, -70, -75), at(-34, -72, -35), at(-36, -50, -52)},
		}
	}
	return p
}

func forcesOf(t *testing.T, x *solver.Axle, p *solver.LoadParts, in *solver.LoadCase) (out [2]solver.Forces) {
	t.Helper()
	k, err := x.Statics(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := k.Forces(solver.NewWorkspace(), in, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// springOf returns a part that can carry a spring in every kind.
func springOf(d *solver.Design) string {
	if d.Kind.Name == "multi-link" || d.Kind.Name == "solid-axle" {
		return "knuckle"
	}
	return "lower-arm"
}

// Limits of a mirrored car's forces, as a share of the load.
const sameForce = 1e-7

// TestForcesMirror: the mirror image of a car under the mirror image of its loads has
// the same forces on the other side; turns are axial and change their sign.
func TestForcesMirror(t *testing.T) {
	r := seeded(63)
	eachCar(t, 63, func(t *testing.T, d *solver.Design, steer float64) {
		m := moved(d, mirrored, mirrored)
		m.Points[0], m.Points[1] = m.Points[1], m.Points[0]
		m.Toe[0], m.Toe[1] = d.Toe[1], d.Toe[0]
		m.Camber[0], m.Camber[1] = d.Camber[1], d.Camber[0]
		m.DragSide = solver.Right - d.DragSide
		in := randomLoads(r, steer)
		other := solver.LoadCase{Attitude: solver.Attitude{Heave: in.Heave, Roll: -in.Roll, Steer: steer}}
		if d.Gear.Kind != solver.Rack {
			other.Steer = -steer
		}
		p, q := boltedArms(d, springOf(d)), &solver.LoadParts{Stud: &solver.Stud{Diameter: 14, Height: 22}}
		q.Stiffness = p.Stiffness
		for _, s := range solver.Sides {
			o := solver.Right - s
			l := in.Wheels[s]
			other.Wheels[o] = solver.WheelLoad{Force: mirrored(l.Force), Moment: r3.Scale(-1, mirrored(l.Moment)), AtCentre: l.AtCentre}
			spring, face := p.Springs[s], p.Faces[s]
			q.Springs[o] = &solver.Spring{Body: mirrored(spring.Body), Wheel: mirrored(spring.Wheel), On: spring.On}
			q.Faces[o] = &solver.BoltedFace{Point: mirrored(face.Point), Normal: mirrored(face.Normal)}
			for _, b := range face.Bolts {
				q.Faces[o].Bolts = append(q.Faces[o].Bolts, mirrored(b))
			}
		}
		a, b := forcesOf(t, assembled(t, d, nil), p, &in), forcesOf(t, assembled(t, m, nil), q, &other)
		for _, s := range solver.Sides {
			sameForces(t, &a[s], &b[solver.Right-s])
		}
	})
}

// sameForces compares the forces of a side with those of its mirror image.
func sameForces(t *testing.T, a, b *solver.Forces) {
	t.Helper()
	limit := sameForce * (1e4 + math.Abs(a.TieRod) + math.Abs(a.Spring))
	for what, v := range map[string][2]float64{
		"tie rod": {a.TieRod, b.TieRod}, "drag link": {a.DragLink, b.DragLink}, "spring": {a.Spring, b.Spring},
		"pull": {a.Arm.Pull, b.Arm.Pull}, "shear": {a.Arm.Shear, b.Arm.Shear},
		"stud": {a.StudBending, b.StudBending},
	} {
		near(t, what, v[1], v[0], limit)
	}
	near(t, "twist", -b.Arm.Twist, a.Arm.Twist, 100*limit)
	near(t, "bend", b.Arm.Bend, a.Arm.Bend, 100*limit)
	for i := range a.Bolts {
		near(t, "bolt", b.Bolts[i], a.Bolts[i], limit)
	}
	if len(a.Give) == 0 || len(a.Give) != len(b.Give) {
		t.Errorf("%d and %d members give", len(a.Give), len(b.Give))
		return
	}
	for i := range a.Give {
		near(t, "give", b.Give[i], a.Give[i], 1e-6*limit)
	}
}

// TestBoltsBalanceTheArm: the shares of the bolts are those of a body that is held by
// them alone: along the face they add up to the pull, about the point of the face to
// the twist, at any place of that point. Their sizes alone are returned, so that two
// bolts are looked at, whose shares follow from force and moment by hand.
func TestBoltsBalanceTheArm(t *testing.T) {
	d := specimens[0].design(t)
	p := boltedArms(d, "lower-arm")
	ball := d.Points[0][6]
	// A face square to x, two bolts one over the other, the ball level with their middle.
	p.Faces[0] = &solver.BoltedFace{Point: solver.Vec{X: -30, Y: ball.Y - 20, Z: ball.Z}, Normal: solver.Vec{X: -1},
		Bolts: []solver.Vec{{X: -30, Y: ball.Y - 20, Z: ball.Z - 25}, {X: -30, Y: ball.Y - 20, Z: ball.Z + 25}}}
	in := solver.LoadCase{Wheels: [2]solver.WheelLoad{{Force: solver.Vec{X: -4000, Y: 900, Z: 3000}}}}
	x := assembled(t, d, nil)
	f := forcesOf(t, x, p, &in)[0]
	rod := r3.Scale(f.TieRod, r3.Unit(r3.Sub(d.Points[0][7], ball)))
	near(t, "pull", f.Arm.Pull, -rod.X, 1e-6)
	near(t, "shear", f.Arm.Shear, math.Hypot(rod.Y, rod.Z), 1e-6)
	lever := r3.Sub(ball, p.Faces[0].Point)
	moment := r3.Cross(lever, rod)
	near(t, "twist", f.Arm.Twist, -moment.X, 1e-3)
	near(t, "bend", f.Arm.Bend, math.Hypot(moment.Y, moment.Z), 1e-3)
	// About the middle the lower bolt, 25 mm down, is pushed along y by moment/50.
	across := moment.X / 50
	near(t, "lower bolt", f.Bolts[0], math.Hypot(rod.Y/2+across, rod.Z/2), 1e-6)
	near(t, "upper bolt", f.Bolts[1], math.Hypot(rod.Y/2-across, rod.Z/2), 1e-6)
	near(t, "stud", f.StudBending, 32*math.Hypot(rod.X, rod.Y)*22/(math.Pi*14*14*14), 1e-9)
}

// TestStudBending: 10 kN across a stud of 5/8 in with the ball 40 mm over its root
// makes 1018 MPa, recomputed from the formula of any textbook; a stack counts up and
// down alike.
func TestStudBending(t *testing.T) {
	d := specimens[0].design(t)
	in := solver.LoadCase{Wheels: [2]solver.WheelLoad{{Force: solver.Vec{Y: 5000, Z: 3000}}}}
	p := boltedArms(d, "lower-arm")
	p.Stud = &solver.Stud{Diameter: 15.875, Height: 40}
	for _, stack := range []float64{0, 12, -12} {
		x := assembled(t, d, map[string]float64{"tieRodOuterHeight": stack})
		f := forcesOf(t, x, p, &in)[0]
		rod := r3.Sub(x.StaticPoint(0, 6), x.StaticPoint(0, 7))
		across := math.Abs(f.TieRod) * math.Hypot(rod.X, rod.Y) / r3.Norm(rod)
		near(t, "bending", f.StudBending, 1018.4*across/10000*(40+math.Abs(stack))/40, 1e-4*f.StudBending)
	}
}

// TestIdleWheel: a wheel of an independent suspension on which nothing acts has no
// forces, whatever the other bears, and needs no spring; that of a solid axle feels
// the tie rod.
func TestIdleWheel(t *testing.T) {
	eachCar(t, 64, func(t *testing.T, d *solver.Design, steer float64) {
		p := boltedArms(d, springOf(d))
		in := solver.LoadCase{Attitude: solver.Attitude{Steer: steer}, Wheels: [2]solver.WheelLoad{{Force: solver.Vec{X: -3000, Z: 4000}}}}
		x := assembled(t, d, nil)
		if !x.Solid() {
			p.Springs[solver.Right] = nil
		}
		f := forcesOf(t, x, p, &in)
		if x.Solid() {
			near(t, "tie rod", f[solver.Right].TieRod, f[solver.Left].TieRod, 0)
			return
		}
		r := &f[solver.Right]
		if r.TieRod != 0 || r.Spring != 0 || r.Arm != (solver.ArmForces{}) || r.StudBending != 0 || len(r.Bolts) != 3 || r.Bolts[0] != 0 {
			t.Errorf("the idle wheel has %+v", *r)
		}
	})
}

// TestForcesRefuse what cannot be answered, by name.
func TestForcesRefuse(t *testing.T) {
	loaded := solver.LoadCase{Wheels: [2]solver.WheelLoad{{}, {Force: solver.Vec{Z: 3000}}}}
	for i := range specimens {
		d := specimens[i].design(t)
		x := assembled(t, d, nil)
		p, _ := springsOn(d, springOf(d))
		p.Springs[solver.Right] = nil
		k, err := x.Statics(p)
		if err != nil {
			t.Fatal(err)
		}
		var out [2]solver.Forces
		var none *solver.SpringError
		err = k.Forces(solver.NewWorkspace(), &loaded, &out)
		if own := d.Kind.Name == "strut"; own == errors.As(err, &none) || !own && none.Side != solver.Right {
			t.Errorf("%s without a right spring: error %v", d.Kind.Name, err)
		}
	}
	d := specimens[3].design(t)
	p, _ := springsOn(d, "knuckle")
	p.Springs[0].On = solver.OnLowerArm
	if _, err := assembled(t, d, nil).Statics(p); err == nil || !strings.Contains(err.Error(), "spring") || !strings.Contains(err.Error(), "lower-arm") {
		t.Errorf("a multi-link's spring on its lower arm: error %v", err)
	}
	d = specimens[0].design(t)
	p = boltedArms(d, "lower-arm")
	p.Faces[1].Bolts = []solver.Vec{{X: 1, Y: 2, Z: 3}, {X: 1, Y: 2, Z: 3}}
	if _, err := assembled(t, d, nil).Statics(p); err == nil || !strings.Contains(err.Error(), "armFace.bolts") {
		t.Errorf("two bolts in one place: error %v", err)
	}
	far := loaded
	far.Heave = 900
	k, err := assembled(t, d, nil).Statics(boltedArms(d, "lower-arm"))
	if err != nil {
		t.Fatal(err)
	}
	var reach *solver.ReachError
	var out [2]solver.Forces
	if err := k.Forces(solver.NewWorkspace(), &far, &out); !errors.As(err, &reach) || !strings.Contains(err.Error(), "travel 900 mm cannot be reached: ") {
		t.Errorf("travel 900 mm: error %v, want a ReachError that says so", err)
	}
}

// TestForcesAllocate no memory for each pose.
func TestForcesAllocate(t *testing.T) {
	for i := range specimens {
		d := specimens[i].design(t)
		k, err := assembled(t, d, nil).Statics(boltedArms(d, springOf(d)))
		if err != nil {
			t.Fatal(err)
		}
		in := randomLoads(seeded(65), 0.02)
		ws := solver.NewWorkspace()
		var out [2]solver.Forces
		if n := testing.AllocsPerRun(10, func() { _ = k.Forces(ws, &in, &out) }); n != 0 {
			t.Errorf("%s: %g allocations, want 0", d.Kind.Name, n)
		}
	}
}

// BenchmarkForces finds the forces of one load case on both sides.
func BenchmarkForces(b *testing.B) {
	for _, i := range []int{0, 2, 3, 6, 4} {
		p := &specimens[i]
		b.Run(p.kind, func(b *testing.B) {
			d := p.design(b)
			x, err := solver.Assemble(d, nil, solver.HoldAll)
			if err != nil {
				b.Fatal(err)
			}
			k, err := x.Statics(boltedArms(d, springOf(d)))
			if err != nil {
				b.Fatal(err)
			}
			in := randomLoads(seeded(66), 5)
			ws := solver.NewWorkspace()
			var out [2]solver.Forces
			b.ReportAllocs()
			for b.Loop() {
				if err := k.Forces(ws, &in, &out); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
