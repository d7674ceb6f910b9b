package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// design returns a car of the kind with these points on the left, mirrored on
// the right, and a level rack.
func design(t testing.TB, kind string, left []solver.Vec, toe, camber float64) *solver.Design {
	t.Helper()
	k, err := solver.KindByName(kind)
	if err != nil {
		t.Fatal(err)
	}
	d := &solver.Design{Kind: k, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}}
	for _, s := range solver.Sides {
		for _, p := range left {
			if s == solver.Right {
				p = mirrored(p)
			}
			d.Points[s] = append(d.Points[s], p)
		}
		d.Toe[s], d.Camber[s] = solver.Deg(toe), solver.Deg(camber)
	}
	return d
}

// rillDesign is the double wishbone of G. Rill and A. Arrieta Castro, Road
// Vehicle Dynamics, 2nd ed., 2020, chapter 5, in mm. Its camber of 0.8 deg is the
// tangent -ez/ey of the listing: the same angle at zero toe.
func rillDesign(t testing.TB) *solver.Design {
	d := design(t, "double-wishbone", []solver.Vec{
		{X: 148, Y: 320, Z: -94}, {X: -251, Y: 320, Z: -80}, {X: 13, Y: 737, Z: -145},
		{X: 122, Y: 435, Z: 230}, {X: -105, Y: 435, Z: 196}, {X: -25, Y: 680, Z: 162},
		{X: -137, Y: 690, Z: -88}, {X: -150, Y: 380, Z: -38}, {X: 0, Y: 768, Z: 0},
	}, 0, 0)
	d.Camber = [2]solver.Angle{rillCamber, rillCamber}
	d.Wheelbase, d.TyreRadius = 2700, 285
	return d
}

// rillCamber is the listing's camber: its spin axis is (0, 1, -c), normalised,
// where c is 0.8 deg in radians.
var rillCamber = solver.Angle(math.Atan(0.8 * math.Pi / 180))

// planarX is how far fore and aft of the ball joints the planar cars have their
// pivots, and tieX where their tie rods run, mm.
const (
	planarX = 150
	tieX    = -120
)

// yz returns a point in the plane of the ball joints.
func yz(y, z float64) solver.Vec { return solver.Vec{Y: y, Z: z} }

func shifted(v solver.Vec, x float64) solver.Vec { v.X += x; return v }

// planarWishbone is an invented double wishbone whose pivot axes run straight
// fore and aft, so that its front view is a plane linkage, with the tie rod from
// inner to (690, 290).
func planarWishbone(t testing.TB, inner solver.Vec) *solver.Design {
	lower, upper := yz(300, 200), yz(350, 420)
	return design(t, "double-wishbone", []solver.Vec{
		shifted(lower, planarX), shifted(lower, -planarX), yz(700, 180),
		shifted(upper, planarX), shifted(upper, -planarX), yz(660, 450),
		shifted(yz(690, 290), tieX), shifted(inner, tieX), yz(780, 310),
	}, 0, 0)
}

// planarStrut is an invented strut likewise, with the tie rod from inner to
// (680, 330).
func planarStrut(t testing.TB, inner solver.Vec) *solver.Design {
	lower := yz(320, 220)
	return design(t, "strut", []solver.Vec{
		shifted(lower, planarX), shifted(lower, -planarX), yz(700, 180),
		yz(560, 800), yz(630, 400),
		shifted(yz(680, 330), tieX), shifted(inner, tieX), yz(780, 310),
	}, 0, 0)
}

// Ideal inner joints of the planar cars, by the pole construction of Reimpell,
// Stoll and Betzler, The Automotive Chassis, 2nd ed., section 4.7.3 (recomputed).
var (
	wishboneIdeal = yz(330.370667, 286.763357)
	strutIdeal    = yz(239.826007, 347.777024)
)

// assembled returns the design's axle with changes in mm or degrees.
func assembled(t testing.TB, d *solver.Design, changes map[string]float64) *solver.Axle {
	t.Helper()
	var cs []solver.Change
	for key, v := range changes {
		cs = append(cs, change(t, d, key, v))
	}
	x, err := solver.Assemble(d, cs, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// swept returns both curves of a sweep.
func swept(t testing.TB, x *solver.Axle, in solver.SweepInput) [2]solver.Curve {
	t.Helper()
	var out [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &in, &out); err != nil {
		t.Fatal(err)
	}
	for _, s := range solver.Sides {
		if in.Sides.Includes(s) && len(out[s].Positions) != len(in.Travels) {
			t.Fatalf("%s: %d positions of %d; reach %+v", s, len(out[s].Positions), len(in.Travels), out[s].Reach)
		}
	}
	return out
}

// instantAt returns what holds of the left wheel at a travel.
func instantAt(t testing.TB, x *solver.Axle, travel float64) solver.Instant {
	t.Helper()
	out := swept(t, x, solver.SweepInput{Travels: []float64{travel}, Instant: true})
	return out[solver.Left].Positions[0].Instant
}
