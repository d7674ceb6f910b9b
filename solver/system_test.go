package solver

import (
	"math/rand/v2"
	"testing"
)

// residualAgrees is how well the two ways to a residual agree, mm.
const residualAgrees = 1e-9

// testAxle returns an invented axle of a kind, its right side the mirror image of
// the left.
func testAxle(t *testing.T, kind string, side, common []Vec) *Axle {
	t.Helper()
	k, err := KindByName(kind)
	if err != nil {
		t.Fatal(err)
	}
	d := &Design{Kind: k, Gear: Gear{Kind: Rack, Axis: Vec{Y: 1}}, TyreRadius: 300, Common: common, DragSide: Right}
	for _, s := range Sides {
		for _, p := range side {
			d.Points[s] = append(d.Points[s], s.Mirrored(p))
		}
	}
	x, err := Assemble(d, nil, HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// testBeam returns a solid axle on four links with a panhard rod.
func testBeam(t *testing.T) *Axle {
	return testAxle(t, "solid-axle",
		[]Vec{{X: -16, Y: 610, Z: 475}, {X: 12, Y: 638, Z: 298}, {X: -185, Y: 598, Z: 345}, {Y: 775, Z: 385}},
		[]Vec{
			{X: -870, Y: 385, Z: 405}, {X: -62, Y: 428, Z: 298}, {X: -870, Y: -385, Z: 405}, {X: -62, Y: -428, Z: 298},
			{X: -775, Y: -205, Z: 555}, {X: -28, Y: -245, Z: 495}, {X: 115, Y: 465, Z: 515}, {X: 108, Y: -435, Z: 438},
			{X: 175, Y: 410, Z: 495}, {X: 165, Y: -555, Z: 455},
		})
}

// testWishbone returns a double wishbone with a rack.
func testWishbone(t *testing.T) *Axle {
	return testAxle(t, "double-wishbone", []Vec{
		{X: 130, Y: 340, Z: 205}, {X: -170, Y: 345, Z: 195}, {X: 8, Y: 705, Z: 185},
		{X: 95, Y: 420, Z: 480}, {X: -115, Y: 425, Z: 462}, {X: -20, Y: 668, Z: 455},
		{X: -125, Y: 690, Z: 235}, {X: -118, Y: 345, Z: 242}, {Y: 765, Z: 310},
	}, nil)
}

// TestResidualsAgree: the equations alone, and with their derivatives, say the same
// of any pose.
func TestResidualsAgree(t *testing.T) {
	corner, beam := testWishbone(t), testBeam(t)
	for name, sys := range map[string]system{
		"corner": &cornerPath{c: corner.corners[Left], gear: newGearPath(corner.balls[Left], 3, 2), rate: 1},
		"beam":   &beamPath{b: beam.beam, gear: newGearPath(beam.drag, 3, 2), rate: [2]float64{1, -1}},
	} {
		r := rand.New(rand.NewPCG(20, 50))
		for range 20 {
			var q state
			for i := range sys.size() {
				q[i] = 20 * (2*r.Float64() - 1)
				if rotational(i) {
					q[i] /= lever
				}
			}
			s := 10 * r.Float64()
			var alone, with, rate column
			var jac matrix
			sys.residual(&q, s, &alone)
			sys.linearise(&q, s, &with, &jac, &rate)
			for i := range sys.size() {
				if !(abs(alone[i]-with[i]) <= residualAgrees) {
					t.Errorf("%s: residual %d = %.12g alone, %.12g with derivatives", name, i, alone[i], with[i])
				}
			}
		}
	}
}
