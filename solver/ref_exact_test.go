package solver_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/number"
	"toewright/solver"
)

const (
	parallelSource = "Geometry of parallel links, derived; invented cars whose pivot axes run straight fore and aft. " +
		"A tie rod that equals an arm and is set off from it fore and aft alone moves with it, whatever the other arm does."
	poleSource = "J. Reimpell, H. Stoll, J.W. Betzler, *The Automotive Chassis*, 2nd ed. 2001, s. 4.7.3, reprinted in D.A. Crolla (ed.), " +
		"*Automotive Engineering*, 2009, s. 9.1.7.3, pp. 278-282: the pole construction of the tie rod's inner joint, " +
		"which leaves neither slope nor curvature. Invented cars, figures recomputed."
	sphereSource = "M. Raghavan, Suspension design for linear toe curves, J. Mech. Des. 126(2) (2004) 278-282: with the toe held, the inner joint " +
		"is the centre of the sphere through the places of the outer one. On the textbook double wishbone above, recomputed; the direct optimum is (377.983, -39.748)."
	unitSource = "Geometry: a gauge plate of length D on one wheel reads D·sin(toe); a wheel at a toe angle slips sideways by its sine per distance rolled."
)

var exactReferences = []reference{
	{"Parallel links: no toe at any travel", parallelSource, parallelLinks},
	{"Pole construction, double wishbone", poleSource, poleWishbone},
	{"Pole construction, strut", poleSource, poleStrut},
	{"Sphere through the path of the outer ball", sphereSource, spherePath},
	{"Toe as a length, and scrub", unitSource, toeUnits},
}

// planar returns the planar double wishbone with other joints in its plane.
func planar(t testing.TB, upperInner, upperOuter, inner, outer solver.Vec) *solver.Axle {
	d := planarWishbone(t, inner)
	for _, s := range solver.Sides {
		put := func(i int, v solver.Vec) {
			if s == solver.Right {
				v = mirrored(v)
			}
			d.Points[s][i] = v
		}
		put(3, shifted(upperInner, planarX))
		put(4, shifted(upperInner, -planarX))
		put(5, upperOuter)
		put(6, shifted(outer, tieX))
	}
	return assembled(t, d, nil)
}

func parallelLinks(t *testing.T) []claim {
	var cs []claim
	for _, tt := range []struct {
		name                   string
		upperInner, upperOuter solver.Vec
		inner, outer           solver.Vec
		camber                 bool
	}{
		{"rod like the lower arm", yz(350, 420), yz(660, 450), yz(300, 200), yz(700, 180), false},
		{"rod like the upper arm", yz(350, 420), yz(660, 450), yz(350, 420), yz(660, 450), false},
		{"parallelogram", yz(270, 430), yz(670, 410), yz(320, 320), yz(720, 300), true},
	} {
		in := solver.SweepInput{}
		in.Travels, _ = solver.Grid(60, 60, 5)
		toe, camber := 0.0, 0.0
		for _, p := range swept(t, planar(t, tt.upperInner, tt.upperOuter, tt.inner, tt.outer), in)[solver.Left].Positions {
			toe = math.Max(toe, math.Abs(p.Toe.Degrees()))
			camber = math.Max(camber, math.Abs(p.Camber.Degrees()))
		}
		cs = append(cs, claim{tt.name + ": greatest toe within 60 mm", "deg", 0, toe, 1e-10})
		if tt.camber {
			cs = append(cs, claim{tt.name + ": greatest camber within 60 mm", "deg", 0, camber, 1e-10})
		}
	}
	return cs
}

// rodScaled returns the inner joint of a rod k times as long on the same line.
func rodScaled(inner, outer solver.Vec, k float64) solver.Vec {
	return r3.Add(outer, r3.Scale(k, r3.Sub(inner, outer)))
}

// curveAt returns the left wheel's positions at travels, and what holds at 0.
func curveAt(t testing.TB, d *solver.Design, travels ...float64) ([]solver.Position, *solver.Instant) {
	ps := swept(t, assembled(t, d, nil), solver.SweepInput{Travels: travels, Instant: true})[solver.Left].Positions
	for i := range ps {
		if ps[i].Travel == 0 {
			return ps, &ps[i].Instant
		}
	}
	t.Fatal("no position at 0")
	return nil, nil
}

// degPerMetre returns a slope of radians by mm in degrees by m, and degPerMetre2 a
// curvature likewise.
func degPerMetre(x float64) float64  { return 1e3 * solver.Angle(x).Degrees() }
func degPerMetre2(x float64) float64 { return 1e6 * solver.Angle(x).Degrees() }

// A poleCar is a planar car and what the construction says of it.
type poleCar struct {
	design      func(testing.TB, solver.Vec) *solver.Design
	outer       solver.Vec
	ideal, pole solver.Vec
	toe         [][3]float64 // travel, toe, half a unit of its last printed digit
	raised      float64      // slope with the inner joint 5 mm higher, deg/m
	curvature   [][2]float64 // by the rod's length as a share, deg/m²
	span        float64      // travel either way, mm, over which that difference was taken
}

func (c *poleCar) claims(t *testing.T) []claim {
	ps, now := curveAt(t, c.design(t, c.ideal), -40, -20, -10, 0, 10, 20, 40)
	cs := []claim{
		{"instant centre, y", "mm", c.pole.Y, now.FrontCentre.Y, 1e-5},
		{"instant centre, z", "mm", c.pole.Z, now.FrontCentre.Z, 1e-5},
		{"toe slope at the ideal inner joint", "deg/m", 0, degPerMetre(now.ToeRate), 1e-5},
		{"toe curvature at the ideal inner joint", "deg/m²", 0, degPerMetre2(now.ToeCurvature), 1e-4},
	}
	for _, row := range c.toe {
		for i := range ps {
			if ps[i].Travel == row[0] {
				// The joint's own place is given to 1e-6 mm, worth 3e-9 deg at 10 mm.
				cs = append(cs, claim{fmt.Sprintf("toe at %+g mm", row[0]), "deg", row[1], ps[i].Toe.Degrees(), row[2] + 3e-10*math.Abs(row[0])})
			}
		}
	}
	_, now = curveAt(t, c.design(t, r3.Add(c.ideal, solver.Vec{Z: 5})), 0)
	cs = append(cs, claim{"toe slope, joint raised by 5 mm", "deg/m", c.raised, degPerMetre(now.ToeRate), 1e-3})
	for _, row := range c.curvature {
		h := c.span
		ps, now = curveAt(t, c.design(t, rodScaled(c.ideal, c.outer, row[0])), -h, 0, h)
		bend := float64(ps[2].Toe-2*ps[1].Toe+ps[0].Toe) / (h * h)
		cs = append(cs,
			claim{fmt.Sprintf("toe slope, rod of %g %% on the same line", 100*row[0]), "deg/m", 0, degPerMetre(now.ToeRate), 1e-5},
			claim{fmt.Sprintf("toe curvature over ±%g mm, rod of %g %%", h, 100*row[0]), "deg/m²", row[1], degPerMetre2(bend), 1e-2})
	}
	return cs
}

func poleWishbone(t *testing.T) []claim {
	c := poleCar{
		design: planarWishbone, outer: yz(690, 290), ideal: wishboneIdeal, pole: yz(-1165.934066, 273.296703),
		toe: [][3]float64{
			{-40, -7.170e-04, 5e-8}, {-20, -9.336e-05, 5e-9}, {-10, -1.192e-05, 5e-9},
			{10, 1.247e-05, 5e-9}, {20, 1.021e-04, 5e-8}, {40, 8.585e-04, 5e-8},
		},
		raised: 6.336, curvature: [][2]float64{{0.8, -301.58}, {1.2, 201.05}}, span: 5,
	}
	return c.claims(t)
}

func poleStrut(t *testing.T) []claim {
	c := poleCar{
		design: planarStrut, outer: yz(680, 330), ideal: strutIdeal, pole: yz(-1599.624413, 422.065728),
		toe: [][3]float64{
			{-40, 1.3698e-02, 5e-7}, {-20, 1.7139e-03, 5e-8}, {-10, 2.1463e-04, 5e-9},
			{10, -2.1599e-04, 5e-9}, {20, -1.7357e-03, 5e-8}, {40, -1.4050e-02, 5e-7},
		},
		raised: 5.257, curvature: [][2]float64{{0.8, -251.66}}, span: 10,
	}
	return c.claims(t)
}

func spherePath(t *testing.T) []claim {
	x := assembled(t, rillDesign(t), nil)
	ws := solver.NewWorkspace()
	ps, err := x.OuterPath(ws, solver.Left, []float64{-50, 0, 50}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var cs []claim
	for i, want := range []solver.Vec{
		{X: -136.986276, Y: 678.960701, Z: -135.121373}, {X: -137, Y: 690, Z: -88}, {X: -136.849017, Y: 693.693483, Z: -41.939991},
	} {
		at := fmt.Sprintf(" at %+d mm", 50*(i-1))
		cs = append(cs,
			claim{"outer ball, x" + at, "mm", want.X, ps[i].X, textbookLength},
			claim{"outer ball, y" + at, "mm", want.Y, ps[i].Y, textbookLength},
			claim{"outer ball, z" + at, "mm", want.Z, ps[i].Z, textbookLength})
	}
	travels, _ := solver.Grid(50, 50, 10)
	fit, ok := x.IdealInner(ws, solver.Left, travels, nil)
	if !ok {
		t.Fatal("no centre")
	}
	return append(cs,
		claim{"centre, y", "mm", 377.9915, fit.At.Y, 1e-4},
		claim{"centre, z", "mm", -39.7491, fit.At.Z, 1e-4},
		claim{"rms of the length", "µm", 1.16, 1000 * fit.RMS, 1e-2})
}

func toeUnits(*testing.T) []claim {
	plate := func(deg, base float64) float64 { return number.OverPlate(solver.Deg(deg).Radians(), base) }
	angle := func(reading, base float64) float64 { return solver.Angle(number.ToeOfPlate(reading, base)).Degrees() }
	const inch = 25.4
	return []claim{
		{"0.1 deg over 381 mm", "mm", 0.664970, plate(0.1, 381), 1e-6},
		{"1 deg over 381 mm", "mm", 6.649367, plate(1, 381), 1e-6},
		{"1 deg over 508 mm", "mm", 8.865822, plate(1, 508), 1e-6},
		{"1/16 in over 28 in", "deg", 0.12789247, angle(inch/16, 28*inch), 1e-8},
		{"0.010 in over 15 in", "deg", 0.03819719, angle(0.010*inch, 15*inch), 1e-8},
		{"slip at 0.1 deg", "m/km", 1.745328, solver.Scrub(solver.Deg(0.1), 1000), 1e-6},
		{"slip at 0.1 deg", "ft/mile", 9.2153, solver.Scrub(solver.Deg(0.1), 5280), 1e-4},
		{"slip at 1 deg", "m/km", 17.452406, solver.Scrub(solver.Deg(1), 1000), 1e-6},
	}
}
