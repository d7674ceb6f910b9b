package optimize_test

import (
	"testing"

	"toewright/solver"
)

// textbook returns the double wishbone of G. Rill and A. Arrieta Castro, Road
// Vehicle Dynamics, 2nd ed., CRC Press 2020, ch. 5 (coordinates read in public
// copies of its listing), in mm with the ground as datum.
func textbook(t testing.TB) *solver.Assembler {
	t.Helper()
	k, err := solver.KindByName("double-wishbone")
	if err != nil {
		t.Fatal(err)
	}
	left := []solver.Vec{
		{X: 148, Y: 320, Z: -94}, {X: -251, Y: 320, Z: -80}, {X: 13, Y: 737, Z: -145},
		{X: 122, Y: 435, Z: 230}, {X: -105, Y: 435, Z: 196}, {X: -25, Y: 680, Z: 162},
		{X: -137, Y: 690, Z: -88}, {X: -150, Y: 380, Z: -38}, {X: 0, Y: 768, Z: 0},
	}
	d := &solver.Design{Kind: k, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}, TyreRadius: 285}
	for _, p := range left {
		p.Z += 285
		d.Points[solver.Left] = append(d.Points[solver.Left], p)
		p.Y = -p.Y
		d.Points[solver.Right] = append(d.Points[solver.Right], p)
	}
	for _, s := range solver.Sides {
		d.Camber[s] = solver.Deg(0.799948018) // projected 0.8 deg as the true angle
	}
	a, err := solver.NewAssembler(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}
