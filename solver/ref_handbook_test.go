package solver_test

import (
	"fmt"
	"math"
	"testing"

	"toewright/solver"
)

// handbookSource names the table and what it leaves unsaid.
const handbookSource = "*Formula Renault 2.0 2009, Chassis*, issue 2009, s. 30, \"Suspension adjustment tables\", rear axle, wishbones \"25 AE\", " +
	"rows -30 to 0 (read in a stored excerpt; the rows in bump were not in it): coordinates and curves printed side by side. " +
	"Three conventions are not stated there and were inferred from the agreement: travel counts at the tyre's contact, the lowest point of the wheel's plane " +
	"(with the static camber of -5 deg, -30 there is -29.69 at the wheel's centre); toe is that of a wheel which stands upright at rest, camber 0, at the same travel; " +
	"and camber is the static one less the growth of inclination, and the track's contact goes with that camber. Wheelbase is that of the wheel's centre, and of a rear axle grows rearward. Limits are those of the inference, a little over half the last printed digit."

var handbookReferences = []reference{{"A car maker's printed table: rear axle of a racing car", handbookSource, handbookTable}}

// Limits of agreement with the printed table, whose last place is a hundredth.
const (
	handbookAngle  = 0.006 // deg
	handbookLength = 0.006 // mm
)

// handbookStatic is the static camber of the table, deg.
const handbookStatic = -5

// handbookRows are travel, camber, toe, wheelbase, track of one side, castor and
// inclination, mm and deg.
var handbookRows = [][7]float64{
	{-30, -4.19, 0.19, -0.87, -2.61, 20.38, 16.48},
	{-20, -4.45, 0.13, -0.58, -1.57, 20.29, 16.74},
	{-10, -4.72, 0.07, -0.29, -0.70, 20.20, 17.01},
}

// handbookDesign is the printed rear axle: its toe link's inner ball stands still.
func handbookDesign(t testing.TB) *solver.Design {
	d := design(t, "double-wishbone", []solver.Vec{
		{X: 264.30, Y: 105.50, Z: 178.50}, {X: -110.49, Y: 105.50, Z: 162.30}, {X: 77.88, Y: 587.57, Z: 180.53},
		{X: 214.30, Y: 106.44, Z: 348.08}, {X: -214.30, Y: 106.44, Z: 350.47}, {X: -5.90, Y: 516.35, Z: 409.31},
		{X: -69.16, Y: 583.78, Z: 170.13}, {X: -110.49, Y: 105.50, Z: 152.30}, {X: 0, Y: 634.73, Z: 283.92},
	}, 0, 0)
	d.TyreRadius = 283.92
	return d
}

func handbookTable(t *testing.T) []claim {
	d := handbookDesign(t)
	upright := assembled(t, d, nil)
	d.Camber = [2]solver.Angle{solver.Deg(handbookStatic), solver.Deg(handbookStatic)}
	leaning := assembled(t, d, nil)
	var in solver.SweepInput
	for _, row := range handbookRows {
		in.Travels = append(in.Travels, row[0])
	}
	in.Travels = append(in.Travels, 0)
	var out [2]solver.Curve
	if err := leaning.SweepAtContact(solver.NewWorkspace(), &in, &out); err != nil {
		t.Fatal(err)
	}
	ps := out[solver.Left].Positions
	rest := ps[len(ps)-1].KingpinInclination.Degrees()
	sin := func(deg float64) float64 { return math.Sin(float64(solver.Deg(deg))) }
	var cs []claim
	for i, row := range handbookRows {
		p, at := &ps[i], fmt.Sprintf(" at %+g mm", row[0])
		lean := rest - p.KingpinInclination.Degrees() // of the wheel, by the table's third convention
		w := p.WheelCentre
		toe := swept(t, upright, solver.SweepInput{Travels: []float64{w.Z - d.TyreRadius}})[solver.Left].Positions[0].Toe
		cs = append(cs,
			claim{"camber" + at, "deg", row[1], handbookStatic + lean, handbookAngle},
			claim{"toe" + at, "deg", row[2], toe.Degrees(), handbookAngle},
			claim{"wheelbase" + at, "mm", row[3], -w.X, handbookLength},
			claim{"track of one side" + at, "mm", row[4], w.Y - 634.73 - d.TyreRadius*(sin(handbookStatic+lean)-sin(handbookStatic)), handbookLength},
			claim{"castor" + at, "deg", row[5], p.Caster.Degrees(), handbookAngle},
			claim{"inclination" + at, "deg", row[6], p.KingpinInclination.Degrees(), handbookAngle})
	}
	return cs
}
