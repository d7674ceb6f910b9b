package solver_test

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// A specimen is an invented axle from which random ones are scattered: the left
// side's points in the order of the kind's, and those of neither side.
type specimen struct {
	kind   string
	side   []solver.Vec
	common []solver.Vec
	gear   solver.Gear
}

var (
	rack = solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}
	// relay is a centre link with tilted and unequal arms.
	relay = solver.Gear{
		Kind: solver.CentreLink, HasIdler: true,
		PitmanAxis: solver.Vec{X: 0.08, Y: 0.04, Z: 1}, IdlerAxis: solver.Vec{X: 0.1, Y: -0.02, Z: 1},
		Points: [4]solver.Vec{{X: -50, Y: 280, Z: 330}, {X: -185, Y: 275, Z: 312}, {X: -55, Y: -275, Z: 334}, {X: -192, Y: -270, Z: 315}},
	}
	// drop is a pitman arm that swings fore and aft and carries only a drag link.
	drop = solver.Gear{
		Kind: solver.CentreLink, PitmanAxis: solver.Vec{Y: 1},
		Points: [4]solver.Vec{{X: 330, Y: 430, Z: 650}, {X: 330, Y: 440, Z: 500}},
	}
)

// specimens has one of each kind and gear. Geometry invented.
var specimens = []specimen{
	{kind: "double-wishbone", gear: rack, side: []solver.Vec{
		{X: 130, Y: 340, Z: 205}, {X: -170, Y: 345, Z: 195}, {X: 8, Y: 705, Z: 185},
		{X: 95, Y: 420, Z: 480}, {X: -115, Y: 425, Z: 462}, {X: -20, Y: 668, Z: 455},
		{X: -125, Y: 690, Z: 235}, {X: -118, Y: 345, Z: 242}, {Y: 765, Z: 310}}},
	{kind: "double-wishbone", gear: relay, side: []solver.Vec{
		{X: 205, Y: 310, Z: 265}, {X: -215, Y: 315, Z: 250}, {X: 10, Y: 730, Z: 230},
		{X: 110, Y: 385, Z: 560}, {X: -120, Y: 390, Z: 548}, {X: -22, Y: 684, Z: 535},
		{X: -170, Y: 735, Z: 290}, {X: -195, Y: 240, Z: 305}, {Y: 830, Z: 360}}},
	{kind: "strut", gear: rack, side: []solver.Vec{
		{X: 20, Y: 350, Z: 195}, {X: -290, Y: 355, Z: 190}, {X: 6, Y: 710, Z: 180},
		{X: -30, Y: 590, Z: 850}, {X: -5, Y: 665, Z: 330},
		{X: -130, Y: 700, Z: 255}, {X: -145, Y: 345, Z: 265}, {Y: 750, Z: 310}}},
	{kind: "multi-link", gear: rack, side: []solver.Vec{
		{X: 110, Y: 430, Z: 600}, {X: 12, Y: 660, Z: 615}, {X: -175, Y: 420, Z: 585}, {X: -36, Y: 652, Z: 608},
		{X: 180, Y: 360, Z: 205}, {X: 40, Y: 705, Z: 188}, {X: -190, Y: 350, Z: 215}, {X: -22, Y: 715, Z: 184},
		{X: -140, Y: 690, Z: 255}, {X: -145, Y: 325, Z: 262}, {Y: 780, Z: 330}}},
	{kind: "solid-axle", gear: rack, side: axleEnd, common: append(axleLinks[:8:8], solver.Vec{X: 175, Y: 410, Z: 495}, solver.Vec{X: 165, Y: -555, Z: 455})},
	{kind: "solid-axle", gear: drop, side: axleEnd, common: append(axleLinks[:8:8], solver.Vec{X: 330, Y: 440, Z: 500}, solver.Vec{X: -35, Y: 470, Z: 430})},
	{kind: "swing-arm", gear: rack, side: []solver.Vec{
		{X: 20, Y: -180, Z: 250}, {X: -900, Y: 240, Z: 330}, {X: -12, Y: 690, Z: 430}, {X: 10, Y: 715, Z: 270},
		{X: -150, Y: 690, Z: 300}, {X: -160, Y: 60, Z: 330}, {Y: 800, Z: 340}}},
	{kind: "swing-arm", gear: relay, side: []solver.Vec{ // a leading arm
		{X: -380, Y: 360, Z: 300}, {X: -390, Y: 640, Z: 295}, {X: -15, Y: 690, Z: 395}, {X: 12, Y: 712, Z: 250},
		{X: -170, Y: 705, Z: 290}, {X: -195, Y: 240, Z: 305}, {Y: 790, Z: 330}}},
}

var (
	axleEnd   = []solver.Vec{{X: -16, Y: 610, Z: 475}, {X: 12, Y: 638, Z: 298}, {X: -185, Y: 598, Z: 345}, {Y: 775, Z: 385}}
	axleLinks = []solver.Vec{
		{X: -870, Y: 385, Z: 405}, {X: -62, Y: 428, Z: 298}, {X: -870, Y: -385, Z: 405}, {X: -62, Y: -428, Z: 298},
		{X: -775, Y: -205, Z: 555}, {X: -28, Y: -245, Z: 495}, {X: 115, Y: 465, Z: 515}, {X: 108, Y: -435, Z: 438}}
)

// design returns the specimen, its right side the mirror image of the left.
func (p *specimen) design(t testing.TB) *solver.Design {
	t.Helper()
	k, err := solver.KindByName(p.kind)
	if err != nil {
		t.Fatal(err)
	}
	d := &solver.Design{Kind: k, Gear: p.gear, Wheelbase: 2500, TyreRadius: 305,
		Common: append([]solver.Vec(nil), p.common...)}
	for _, s := range solver.Sides {
		d.Toe[s], d.Camber[s] = solver.Deg(0.1), solver.Deg(-0.5)
		for _, v := range p.side {
			if s == solver.Right {
				v = mirrored(v)
			}
			d.Points[s] = append(d.Points[s], v)
		}
	}
	if p.kind == "solid-axle" && p.gear.Kind == solver.Rack {
		d.DragSide = solver.Right
	}
	return d
}

// scatter moves every point of d by up to spread mm each way, and its angles by
// up to half a degree, both sides each for itself.
func scatter(r *rand.Rand, d *solver.Design, spread float64) {
	move := func(v *solver.Vec) {
		*v = r3.Add(*v, solver.Vec{X: spread * (2*r.Float64() - 1), Y: spread * (2*r.Float64() - 1), Z: spread * (2*r.Float64() - 1)})
	}
	for _, s := range solver.Sides {
		for i := range d.Points[s] {
			move(&d.Points[s][i])
		}
		d.Toe[s] += solver.Deg(r.Float64() - 0.5)
		d.Camber[s] += solver.Deg(r.Float64() - 0.5)
	}
	for i := range d.Common {
		move(&d.Common[i])
	}
}

// randomDesign returns a scattered specimen of a kind: mostly by what one shop's
// cars differ, at times by so much that links nearly come in line.
func randomDesign(t testing.TB, r *rand.Rand, p *specimen) *solver.Design {
	d := p.design(t)
	scatter(r, d, [...]float64{10, 30, 60, 90}[r.IntN(4)])
	return d
}

// seeded returns the generator of a test's random linkages.
func seeded(n uint64) *rand.Rand { return rand.New(rand.NewPCG(20, n)) }
