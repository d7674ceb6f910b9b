package solver_test

import (
	"math"
	"path/filepath"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// perMetre turns radians per mm into degrees per metre.
const perMetre = 1000 * 180 / math.Pi

// TestInstantTextbook compares with the instantaneous screw of Rill's example,
// recomputed from the published coordinates by independent programs: slope of
// the toe, and angular velocity and velocity of the wheel centre by its travel.
func TestInstantTextbook(t *testing.T) {
	n := instantAt(t, assembled(t, rillDesign(t), nil), 0)
	omega := solver.Vec{X: -0.1657202460e-3, Y: -0.5968459690e-3} // rad/mm
	v := solver.Vec{X: -0.0498942456, Y: 0.1598793978, Z: 1}
	near(t, "toe slope, deg/m", n.ToeRate*perMetre, 2.525704797, 1e-8)
	near(t, "camber slope, deg/m", n.CamberRate*perMetre, 9.495070674, 1e-6)
	near(t, "front centre y", n.FrontCentre.Y, 768-v.Z/omega.X, 1e-3)
	near(t, "front centre z", n.FrontCentre.Z, v.Y/omega.X, 1e-3)
	near(t, "side centre x", n.SideCentre.X, v.Z/omega.Y, 1e-4)
	near(t, "side centre z", n.SideCentre.Z, -v.X/omega.Y, 1e-4)
}

// TestInstantPlanar holds the instant centres and the second derivatives of the
// planar cars against plane kinematics: the pole of the two arms, the slope of a
// rod raised by 5 mm, the curvature of one 20 % short or long (invented geometry;
// poles, slopes and curvatures recomputed, the latter by differences over 5 mm).
func TestInstantPlanar(t *testing.T) {
	wishbone := planarCase{outer: yz(690, 290), ideal: wishboneIdeal, pole: yz(-1165.934066, 273.296703), kingpin: yz(-40, 270), build: planarWishbone}
	strut := planarCase{outer: yz(680, 330), ideal: strutIdeal, pole: yz(-1599.624413, 422.065728), kingpin: yz(-140, 620), build: planarStrut}
	for _, tt := range []struct {
		name string
		planarCase
		share, raised    float64 // rod length over the ideal one; inner ball raised, mm
		slope, curvature float64 // deg/m, deg/m²
	}{
		{"wishbone", wishbone, 1, 0, 0, 0},
		{"wishbone, rod short", wishbone, 0.8, 0, 0, -301.58},
		{"wishbone, rod long", wishbone, 1.2, 0, 0, 201.05},
		{"wishbone, rod raised", wishbone, 1, 5, 6.336, math.NaN()},
		{"strut", strut, 1, 0, 0, 0},
		{"strut, rod short", strut, 0.8, 0, 0, -251.66},
		{"strut, rod raised", strut, 1, 5, 5.257, math.NaN()},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := tt.build(t, between(tt.outer, tt.ideal, tt.share, tt.raised))
			d.TyreRadius = 310
			n := instantAt(t, assembled(t, d, nil), 0)
			near(t, "pole y", n.FrontCentre.Y, tt.pole.Y, 1e-5)
			near(t, "pole z", n.FrontCentre.Z, tt.pole.Z, 1e-5)
			near(t, "slope, deg/m", n.ToeRate*perMetre, tt.slope, 6e-4)
			if !math.IsNaN(tt.curvature) {
				near(t, "curvature, deg/m²", n.ToeCurvature*1000*perMetre, tt.curvature, 5e-4*math.Abs(tt.curvature)+1e-5)
				near(t, "closed form, deg/m²", n.ToeCurvature*1000*perMetre, tt.bobillier(tt.share), 1e-5)
			}
			// The line from the contact point (780, 0) to the pole, at y = 0.
			near(t, "roll centre", n.RollCentreHeight, tt.pole.Z*780/(780-tt.pole.Y), 1e-4)
		})
	}
}

// planarCase is a planar car with what plane kinematics says of it.
type planarCase struct {
	outer, ideal solver.Vec // ends of the tie rod that keeps toe to the second order
	pole         solver.Vec
	kingpin      solver.Vec // from the lower to the upper point of the steering axis
	build        func(testing.TB, solver.Vec) *solver.Design
}

// bobillier returns the second derivative of the toe, deg/m², of a rod of the
// given share of the ideal length: (kz/h)·(vU/vw)²·(1/L - 1/ρ), where h is the
// rod's lever about the kingpin k.
func (c *planarCase) bobillier(share float64) float64 {
	rho := r3.Norm(r3.Sub(c.ideal, c.outer))
	rod := r3.Unit(r3.Sub(c.ideal, c.outer))
	k := r3.Unit(c.kingpin)
	h := tieX * (k.Z*rod.Y - k.Y*rod.Z)
	v := r3.Norm(r3.Sub(c.outer, c.pole)) / (780 - c.pole.Y)
	return -k.Z / h * v * v * (1/(share*rho) - 1/rho) * 1000 * perMetre
}

// between returns the point at the share l of the way from a to b, raised by z.
func between(a, b solver.Vec, l, z float64) solver.Vec {
	p := r3.Add(a, r3.Scale(l, r3.Sub(b, a)))
	p.Z += z
	return p
}

// instantCases are cars of every kind, moved in every way.
var instantCases = []struct {
	name, file string
	from       solver.Attitude
	motion     solver.Motion
}{
	{"wishbone", "dw05_antidive_skewed_axes.json", solver.Attitude{Steer: 12}, solver.BothWheels},
	{"wishbone in roll", "dw01_saloon_rear_steer.json", solver.Attitude{Heave: 10, Roll: 5}, solver.RollMotion},
	{"strut", "st01_hatch_rear_steer.json", solver.Attitude{Steer: -8}, solver.BothWheels},
	{"multi-link", "ml01_front_virtual_axis.json", solver.Attitude{Steer: 6}, solver.BothWheels},
	{"centre link", "cl01_dw03.json", solver.Attitude{Steer: 0.3}, solver.BothWheels},
	{"axle", "sa01_cross_steer_right_arm.json", solver.Attitude{Steer: 12}, solver.BothWheels},
	{"axle in roll", "sa01_cross_steer_right_arm.json", solver.Attitude{Steer: -7, Roll: 4}, solver.RollMotion},
	{"axle on one wheel", "sa01_cross_steer_right_arm.json", solver.Attitude{}, solver.RightWheel},
}

// TestInstantDifferences compares the rates of every kind with differences of
// neighbouring positions, Richardson's extrapolation applied.
func TestInstantDifferences(t *testing.T) {
	const h = 0.5 // mm
	for _, tt := range instantCases {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			for _, z := range []float64{-30, 0, 25} {
				out := swept(t, x, solver.SweepInput{
					Travels: []float64{z - 2*h, z - h, z, z + h, z + 2*h},
					From:    tt.from, Motion: tt.motion, Instant: true, Ground: true,
				})
				for _, s := range solver.Sides {
					ps := out[s].Positions
					first, second := derivatives(ps, h, func(p *solver.Position) float64 { return float64(p.Toe) })
					near(t, "toe rate", ps[2].Instant.ToeRate, first, 1e-11)
					near(t, "toe curvature", ps[2].Instant.ToeCurvature, second, 1e-10)
					first, _ = derivatives(ps, h, func(p *solver.Position) float64 { return float64(p.Camber) })
					near(t, "camber rate", ps[2].Instant.CamberRate, first, 1e-11)
				}
			}
		})
	}
}

// derivatives returns the first and second derivative by five positions h apart,
// to the fourth order.
func derivatives(ps []solver.Position, h float64, f func(*solver.Position) float64) (first, second float64) {
	a, b, c, d, e := f(&ps[0]), f(&ps[1]), f(&ps[2]), f(&ps[3]), f(&ps[4])
	first = (a - 8*b + 8*d - e) / (12 * h)
	second = (-a + 16*b - 30*c + 16*d - e) / (12 * h * h)
	return first, second
}

// TestContactRate compares the velocity of the knuckle at the contact point with
// differences of where four of the knuckle's hardpoints carry that point.
func TestContactRate(t *testing.T) {
	const h = 0.1 // mm
	for _, tt := range []struct {
		file string
		on   [4]string
	}{
		{"dw05_antidive_skewed_axes.json", [4]string{"lowerBallJoint", "upperBallJoint", "tieRodOuter", "wheelCentre"}},
		{"st01_hatch_rear_steer.json", [4]string{"lowerBallJoint", "strutLower", "tieRodOuter", "wheelCentre"}},
		{"ml01_front_virtual_axis.json", [4]string{"rods.0.outer", "rods.2.outer", "tieRodOuter", "wheelCentre"}},
		{"sa01_cross_steer_right_arm.json", [4]string{"kingpins.0", "kingpins.1", "steeringArmBalls", "wheelCentres"}},
	} {
		c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
		d := c.Study.design(t)
		x := c.Study.candidate(t, d, "base")
		n := instantAtBoth(t, x)
		for _, s := range solver.Sides {
			at := func(l, r float64) solver.Vec {
				return carried(t, x, tt.on, s, n[s].Contact, [2]float64{l, r})
			}
			heave := r3.Scale(1/(2*h), r3.Sub(at(h, h), at(-h, -h)))
			roll := r3.Scale(1/(2*h), r3.Sub(at(h, -h), at(-h, h)))
			if s == solver.Right {
				roll = r3.Scale(-1, roll)
			}
			want := solver.Vec{X: heave.X, Y: roll.Y, Z: roll.Z}
			near(t, tt.file+" "+s.String(), r3.Norm(r3.Sub(n[s].ContactRate, want)), 0, 1e-7)
		}
	}
}

// carried returns where the knuckle of side s carries its point p when the wheels
// move by travels: p keeps its affine coordinates among four hardpoints.
func carried(t testing.TB, x *solver.Axle, on [4]string, s solver.Side, p solver.Vec, travels [2]float64) solver.Vec {
	t.Helper()
	var home, now solver.Placed
	ws := solver.NewWorkspace()
	if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
		t.Fatal(err)
	}
	if err := x.Place(ws, travels, 0, &now); err != nil {
		t.Fatal(err)
	}
	a, b := frame(x, on, s, &home), frame(x, on, s, &now)
	return r3.Add(b[0], turned(a, b, r3.Sub(p, a[0])))
}

// frame returns the first of four hardpoints and the vectors to the others.
func frame(x *solver.Axle, on [4]string, s solver.Side, p *solver.Placed) (f [4]solver.Vec) {
	for i, h := range x.Design().Kind.SidePoints {
		for k, name := range on {
			if h.Name == name {
				f[k] = p.Side[s][i]
			}
		}
	}
	for k := 1; k < 4; k++ {
		f[k] = r3.Sub(f[k], f[0])
	}
	return f
}

// TestRollCentre holds the axle's roll centre against that of each wheel where
// the car is symmetric, and against the panhard rod of a solid axle, which
// crosses the centre plane there.
func TestRollCentre(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	out := swept(t, x, solver.SweepInput{Travels: []float64{-20, 0, 30}, Instant: true})
	for i := range out[0].Positions {
		l, r := &out[solver.Left].Positions[i].Instant, &out[solver.Right].Positions[i].Instant
		c := solver.NewRollCentre(l, r)
		near(t, "y", c.Y, 0, 1e-9)
		near(t, "height", c.Height, l.RollCentreHeight, 1e-9)
		near(t, "right wheel's height", r.RollCentreHeight, l.RollCentreHeight, 1e-9)
	}
	b := instantAtBoth(t, assembled(t, straightAxle(t), nil))
	c := solver.NewRollCentre(&b[0], &b[1])
	near(t, "axle's height", c.Height, panhardHeight, 1e-9)
	near(t, "axle's y", c.Y, 0, 1e-9)
	near(t, "beam's own centre", b[0].FrontCentre.Z, c.Z, 1e-9)
}

func instantAtBoth(t testing.TB, x *solver.Axle) (n [2]solver.Instant) {
	out := swept(t, x, solver.SweepInput{Travels: []float64{0}, Instant: true})
	return [2]solver.Instant{out[0].Positions[0].Instant, out[1].Positions[0].Instant}
}

// TestInstantMirror steers a symmetric car to both sides: what holds of one wheel
// holds, mirrored, of the other.
func TestInstantMirror(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	in := solver.SweepInput{Travels: []float64{-10, 15}, From: solver.Attitude{Steer: 9}, Instant: true}
	a := swept(t, x, in)
	in.From.Steer = -9
	b := swept(t, x, in)
	for i := range a[0].Positions {
		got, want := a[solver.Left].Positions[i].Instant, b[solver.Right].Positions[i].Instant
		near(t, "toe rate", got.ToeRate, want.ToeRate, 1e-12)
		near(t, "curvature", got.ToeCurvature, want.ToeCurvature, 1e-12)
		near(t, "front centre", r3.Norm(r3.Sub(got.FrontCentre, mirrored(want.FrontCentre))), 0, 1e-6)
		near(t, "side centre", r3.Norm(r3.Sub(got.SideCentre, mirrored(want.SideCentre))), 0, 1e-6)
		near(t, "contact rate", r3.Norm(r3.Sub(got.ContactRate, mirrored(want.ContactRate))), 0, 1e-10)
	}
}

// TestInstantAllocates no memory.
func TestInstantAllocates(t *testing.T) {
	for _, file := range []string{"dw01_saloon_rear_steer.json", "st01_hatch_rear_steer.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, filepath.Join("../testdata/cases", file))
		x := c.Study.candidate(t, c.Study.design(t), "base")
		in := solver.SweepInput{Travels: []float64{-20, 0, 20}, Instant: true, Ground: true}
		ws := solver.NewWorkspace()
		var out [2]solver.Curve
		if n := testing.AllocsPerRun(10, func() { _ = x.Sweep(ws, &in, &out) }); n != 0 {
			t.Errorf("%s: %g allocations, want 0", file, n)
		}
	}
}
