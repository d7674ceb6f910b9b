package solver_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// lockLength is the limit within which a lock is found, mm.
const lockLength = 1e-6

// A lockCase is a linkage whose lock is known in closed form. Geometry invented.
type lockCase struct {
	name        string
	axle        func(t *testing.T) *solver.Axle
	bump, droop float64 // distance to the lock, mm; 0 where it is beyond 300
	links       []string
}

// TestLocks finds known locks, and comes within a millionth of a millimetre of
// them from below and not from above.
func TestLocks(t *testing.T) {
	for _, tt := range []lockCase{steepWishbone(), shortRod(), steepStrut(), shortPanhard()} {
		t.Run(tt.name, func(t *testing.T) {
			x := tt.axle(t)
			in := solver.SweepInput{}
			in.Travels, _ = solver.Grid(300, 300, 10)
			ws := solver.NewWorkspace()
			var out [2]solver.Curve
			if err := x.Sweep(ws, &in, &out); err != nil {
				t.Fatal(err)
			}
			for _, s := range solver.Sides {
				r := &out[s].Reach
				checkLock(t, "bump", r.Bump, tt.bump, r.BumpEnds, r.BumpUnsure, r.BumpLink, tt.links)
				checkLock(t, "droop", r.Droop, tt.droop, r.DroopEnds, r.DroopUnsure, r.DroopLink, tt.links)
			}
			for _, end := range []float64{tt.bump, -tt.droop} {
				if end != 0 {
					checkBrink(t, x, end)
				}
			}
		})
	}
}

func checkLock(t *testing.T, what string, got, want float64, ends, unsure bool, link string, links []string) {
	t.Helper()
	if want == 0 {
		return
	}
	if !ends || unsure {
		t.Errorf("%s: no lock found, want one at %g mm", what, want)
		return
	}
	near(t, what+" reach", got, want, lockLength)
	for _, l := range links {
		if strings.HasPrefix(link, l) {
			return
		}
	}
	t.Errorf("%s: %q ends the travel, want one of %q", what, link, links)
}

// checkBrink sweeps to just short of a lock, and to just beyond it.
func checkBrink(t *testing.T, x *solver.Axle, end float64) {
	t.Helper()
	for _, tt := range []struct {
		share float64 // of the brink from the lock, inward
		want  int     // positions
	}{{1, 1}, {-1, 0}} {
		in := solver.SweepInput{Travels: []float64{end - tt.share*math.Copysign(lockLength, end)}}
		var out [2]solver.Curve
		if err := x.Sweep(solver.NewWorkspace(), &in, &out); err != nil {
			t.Fatal(err)
		}
		if n := len(out[solver.Left].Positions); n != tt.want {
			t.Fatalf("%d positions at travel %.9g, want %d", n, in.Travels[0], tt.want)
		}
		for _, p := range out[solver.Left].Positions {
			if math.IsNaN(float64(p.Toe + p.Camber + p.Caster)) {
				t.Errorf("no number at travel %.9g: %+v", p.Travel, p)
			}
		}
	}
}

// steepWishbone has equal parallel arms, and a tie rod like them, so that the
// knuckle does not turn: the travel ends where they stand upright.
func steepWishbone() lockCase {
	arm := solver.Vec{Y: 150, Z: 80}
	l := math.Hypot(arm.Y, arm.Z)
	return lockCase{
		name: "double wishbone, arms upright", bump: l - arm.Z, links: []string{"lower arm", "upper arm"},
		axle: func(t *testing.T) *solver.Axle {
			lower, upper, rod := yz(500, 150), yz(440, 380), yz(480, 260)
			return assembled(t, design(t, "double-wishbone", []solver.Vec{
				shifted(lower, planarX), shifted(lower, -planarX), r3.Add(lower, arm),
				shifted(upper, planarX), shifted(upper, -planarX), r3.Add(upper, arm),
				shifted(r3.Add(rod, arm), tieX), shifted(rod, tieX), yz(740, 310),
			}, 0, 0), nil)
		},
	}
}

// shortRod has equal parallel arms and an upright kingpin, about which a short tie
// rod turns the knuckle as it swings: the travel ends where rod and steering arm
// come in line.
func shortRod() lockCase {
	const radius, rise, arm = 400.0, -20.0, 120.0
	lower, upper := yz(300, 200), yz(300, 430)
	swing := solver.Vec{Y: math.Sqrt(radius*radius - rise*rise), Z: rise}
	inner, outer := yz(300+swing.Y-140, 280), yz(300+swing.Y, 280)
	// reach is how much of the rod's length is left, seen from above, beyond what
	// is needed to reach the steering arm's circle, with the arms at an angle.
	reach := func(angle float64) float64 {
		sin, cos := math.Sincos(angle)
		height := radius*sin - rise
		across := math.Hypot(lower.Y+radius*cos-inner.Y, -tieX)
		return math.Sqrt(140*140-height*height) - (across - arm)
	}
	static := math.Asin(rise / radius)
	lock := func(far float64) float64 {
		return math.Abs(radius*math.Sin(bisect(reach, static, far)) - rise)
	}
	return lockCase{
		name: "double wishbone, tie rod in line", links: []string{"tie rod"},
		bump:  lock(math.Asin((rise + 139.9) / radius)),
		droop: lock(math.Asin((rise - 139.9) / radius)),
		axle: func(t *testing.T) *solver.Axle {
			return assembled(t, design(t, "double-wishbone", []solver.Vec{
				shifted(lower, planarX), shifted(lower, -planarX), r3.Add(lower, swing),
				shifted(upper, planarX), shifted(upper, -planarX), r3.Add(upper, swing),
				shifted(outer, tieX), shifted(inner, tieX), yz(780, 310),
			}, 0, 0), nil)
		},
	}
}

// steepStrut has a short lower arm and a tie rod like it, so that the knuckle turns
// in the transverse plane alone: the travel ends where the wheel is highest.
func steepStrut() lockCase {
	pivot, ball, top, wheel := yz(560, 150), yz(700, 230), yz(600, 850), yz(760, 310)
	radius := math.Hypot(ball.Y-pivot.Y, ball.Z-pivot.Z)
	static := math.Atan2(ball.Z-pivot.Z, ball.Y-pivot.Y)
	lean := func(y, z float64) float64 { return math.Atan2(top.Y-y, top.Z-z) }
	// rate is the speed of the wheel's rise as the arm turns: that of the ball, and
	// the turn of the knuckle, which is that of the line from ball to mount.
	rate := func(angle float64) float64 {
		sin, cos := math.Sincos(angle)
		y, z := pivot.Y+radius*cos, pivot.Z+radius*sin
		dy, dz := -radius*sin, radius*cos
		my, mz := top.Y-y, top.Z-z
		turn := (-dy*mz + my*dz) / (my*my + mz*mz) // of lean
		wy, _ := leaning(wheel.Y-ball.Y, wheel.Z-ball.Z, lean(y, z)-lean(ball.Y, ball.Z))
		return dz - turn*wy
	}
	end := bisect(rate, static, math.Pi/2+0.6)
	y, z := pivot.Y+radius*math.Cos(end), pivot.Z+radius*math.Sin(end)
	_, wz := leaning(wheel.Y-ball.Y, wheel.Z-ball.Z, lean(y, z)-lean(ball.Y, ball.Z))
	return lockCase{
		name: "strut, wheel at its highest", links: []string{"lower arm"}, bump: z + wz - wheel.Z,
		axle: func(t *testing.T) *solver.Axle {
			return assembled(t, design(t, "strut", []solver.Vec{
				shifted(pivot, planarX), shifted(pivot, -planarX), ball, top, ball2(ball, top),
				shifted(ball, tieX), shifted(pivot, tieX), wheel,
			}, 0, 0), nil)
		},
	}
}

// ball2 returns a second point of the strut's axis, which passes the lower ball.
func ball2(ball, top solver.Vec) solver.Vec {
	return yz(ball.Y+0.3*(top.Y-ball.Y), ball.Z+0.3*(top.Z-ball.Z))
}

// leaning returns (y, z) turned by an angle from z to y.
func leaning(y, z, angle float64) (float64, float64) {
	sin, cos := math.Sincos(angle)
	return cos*y + sin*z, cos*z - sin*y
}

// shortPanhard is an axle on parallel links of one length, which keep it upright,
// with a short panhard rod: the travel of both wheels ends where the rod no
// longer reaches.
//
// The links' sphere and the rod's, (x+l)²+y²+h² = l² and x²+(y+p)²+(h+q)² = p²+q²,
// leave a quadratic equation for the sideways movement y at the heave h.
func shortPanhard() lockCase {
	const l, p, q = 800.0, -100.0, -20.0
	free := func(h float64) float64 { // of y² + 2by + c: b² - c
		k := 1 + p*p/(l*l)
		b := (p*q*h/(l*l) + p) / k
		c := (q*q*h*h/(l*l) + 2*q*h + h*h) / k
		return b*b - c
	}
	return lockCase{
		name: "solid axle, panhard rod", links: []string{"links.3"},
		bump: bisect(free, 0, 200), droop: -bisect(free, 0, -200),
		axle: func(t *testing.T) *solver.Axle {
			d := straightAxle(t)
			d.Common[4] = solver.Vec{X: -l, Z: 500}
			d.Common[6], d.Common[7] = solver.Vec{Y: 50, Z: 430}, solver.Vec{Y: 50 + p, Z: 430 + q}
			return assembled(t, d, nil)
		},
	}
}

// bisect returns the root of f between a and b, of which f has different signs.
func bisect(f func(float64) float64, a, b float64) float64 {
	fa := f(a)
	for range 200 {
		m := (a + b) / 2
		if f(m)*fa > 0 {
			a = m
		} else {
			b = m
		}
	}
	return (a + b) / 2
}

// TestGearLock compares the locks of a plane four-bar with the cosine rule: link
// and idler arm in line, beyond which the pitman arm cannot turn.
func TestGearLock(t *testing.T) {
	g := solver.Gear{
		Kind: solver.CentreLink, HasIdler: true, PitmanAxis: solver.Vec{Z: 1}, IdlerAxis: solver.Vec{Z: 2},
		Points: [4]solver.Vec{{Y: 250, Z: 300}, {X: -160, Y: 240, Z: 300}, {X: 5, Y: -240, Z: 300}, {X: -120, Y: -255, Z: 300}},
	}
	across := func(a, b solver.Vec) (length, bearing float64) {
		return math.Hypot(b.X-a.X, b.Y-a.Y), math.Atan2(b.Y-a.Y, b.X-a.X)
	}
	arm, at := across(g.Points[0], g.Points[1])
	idler, _ := across(g.Points[2], g.Points[3])
	link, _ := across(g.Points[1], g.Points[3])
	base, line := across(g.Points[0], g.Points[2])
	// open is the angle between arm and base when link and idler make one line of
	// the length c.
	open := func(c float64) float64 { return math.Acos((arm*arm + base*base - c*c) / (2 * arm * base)) }
	lo, hi := g.Reach()
	// The arm points rearward, the base to the right: turning to the left by the
	// right hand closes the angle between them down to the folded line.
	near(t, "angle at the upper lock, rad", opening(at+hi, line), open(link-idler), 1e-9)
	near(t, "angle at the lower lock, rad", opening(at+lo, line), open(link+idler), 1e-9)
}

// opening returns the angle between two bearings, 0 to pi.
func opening(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 2*math.Pi)) }

// TestSteerWithinTheGearsLock: a steering input is followed up to the gear's own lock, whichever
// way, and refused from there on.
func TestSteerWithinTheGearsLock(t *testing.T) {
	c := loadCase(t, "../testdata/cases/cl01_dw03.json")
	d := c.Study.design(t)
	x := c.Study.candidate(t, d, "base")
	lo, hi := d.Gear.Reach()
	ws := solver.NewWorkspace()
	for _, lock := range []float64{lo, hi} {
		for _, part := range []float64{0.01, 0.3, 0.9, 0.999, 1 - 1e-9, 1 + 1e-9, 1.001, 1.5, 40} {
			in := solver.SweepInput{Travels: []float64{0}, From: solver.Attitude{Steer: part * lock}}
			err := x.Sweep(ws, &in, new([2]solver.Curve))
			if beyond := err != nil && strings.Contains(err.Error(), "lock: centre link"); beyond != (part > 1) {
				t.Errorf("at %g of the lock at %.6g rad: error %v", part, lock, err)
			}
		}
	}
}

// TestSteerOfAGearWithoutLock: a pitman arm that is short beside the idler arm can go round, and
// is followed for half a turn; an input however large is refused at once.
func TestSteerOfAGearWithoutLock(t *testing.T) {
	c := loadCase(t, "../testdata/cases/cl01_dw03.json")
	d := c.Study.design(t)
	pivot := d.Gear.Points[0]
	d.Gear.Points[1] = r3.Add(pivot, r3.Scale(0.3, r3.Sub(d.Gear.Points[1], pivot)))
	if lo, hi := d.Gear.Reach(); lo != -math.Pi || hi != math.Pi {
		t.Fatalf("locks at %g and %g rad", lo, hi)
	}
	x := assembled(t, d, nil)
	for _, steer := range []float64{math.Pi, -4, 1e12, -math.MaxFloat64} {
		in := solver.SweepInput{Travels: []float64{0}, From: solver.Attitude{Steer: steer}}
		if err := x.Sweep(solver.NewWorkspace(), &in, new([2]solver.Curve)); err == nil || !strings.Contains(err.Error(), "lock: centre link") {
			t.Errorf("at %g rad: error %v", steer, err)
		}
	}
}
