package solver_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"toewright/solver"
)

// saneTravels are those of checkSane, mm.
var saneTravels = []float64{-80, -60, -40, -20, -19, -5, 0, 1, 3, 20, 40, 60, 80}

// checkSane moves a design, good or bad, and fails unless every step gives either
// numbers that hold together or an error that says what is wrong.
func checkSane(t *testing.T, d *solver.Design, steer float64) {
	t.Helper()
	x, err := solver.Assemble(d, nil, solver.HoldAll)
	if err != nil {
		checkError(t, err)
		return
	}
	ws := solver.NewWorkspace()
	for _, m := range []solver.Motion{solver.BothWheels, solver.RollMotion} {
		in := solver.SweepInput{Travels: saneTravels, Motion: m, From: solver.Attitude{Steer: steer}, Ground: true, Instant: true}
		var out [2]solver.Curve
		if err := x.Sweep(ws, &in, &out); err != nil {
			checkError(t, err)
			return
		}
		for _, s := range solver.Sides {
			checkCurve(t, x, s, m, &out[s])
		}
		for _, p := range out[solver.Left].Positions {
			checkPlaced(t, x, ws, m, p.Travel, steer)
		}
	}
}

func checkError(t *testing.T, err error) {
	t.Helper()
	if s := err.Error(); !strings.HasPrefix(s, "solver: ") || strings.Contains(s, "NaN") || strings.ContainsAny(s, "\n") {
		t.Errorf("error %q, want one line from the solver that names what is wrong", s)
	}
}

// checkCurve holds positions to numbers, and wheel centres to their travels.
func checkCurve(t *testing.T, x *solver.Axle, s solver.Side, m solver.Motion, c *solver.Curve) {
	t.Helper()
	r := &c.Reach
	if r.BumpEnds && r.BumpLink == "" || r.DroopEnds && r.DroopLink == "" {
		t.Errorf("%s: a lock without a link: %+v", s, *r)
	}
	if n := len(c.Positions); n < len(saneTravels) && r.Whole() {
		t.Errorf("%s: %d positions of %d, and no lock", s, n, len(saneTravels))
	}
	wheel := len(x.Design().Kind.SidePoints) - 1
	home := x.StaticPoint(s, wheel).Z
	for i := range c.Positions {
		p := &c.Positions[i]
		if sum := float64(p.Toe+p.Camber) + p.WheelCentre.X + p.WheelCentre.Y; math.IsNaN(sum) || math.IsInf(sum, 0) {
			t.Fatalf("%s: no number at travel %g: %+v", s, p.Travel, *p)
		}
		travel := p.Travel
		if m == solver.RollMotion && s == solver.Right {
			travel = -travel
		}
		near(t, "height of the wheel centre", p.WheelCentre.Z-home, travel, heldLength)
	}
	checkNeighbours(t, c.Positions, 2)
}

func checkPlaced(t *testing.T, x *solver.Axle, ws *solver.Workspace, m solver.Motion, travel, steer float64) {
	t.Helper()
	at := [2]float64{travel, travel}
	if m == solver.RollMotion {
		at[solver.Right] = -travel
	}
	var p solver.Placed
	if err := x.Place(ws, at, steer, &p); err != nil {
		checkError(t, err) // the path there differs: it need not be open
		return
	}
	if e := x.LinkError(&p); !(math.Abs(e.By) <= heldLength) {
		t.Errorf("travel %g: %s, %s misses its length by %g mm", travel, e.Side, e.Link, e.By)
	}
}

// TestCoincidentPoints puts every point of a side on every other.
func TestCoincidentPoints(t *testing.T) {
	for i := range specimens {
		p := &specimens[i]
		for a := range p.side {
			for b := range p.side {
				d := p.design(t)
				d.Points[solver.Left][a] = d.Points[solver.Left][b]
				t.Run(fmt.Sprintf("%s, %s on %s", p.kind, d.Kind.SidePoints[a].Name, d.Kind.SidePoints[b].Name), func(t *testing.T) {
					checkSane(t, d, 0)
				})
			}
		}
	}
}

// TestDegenerate spoils every kind of car in ways that a file may.
func TestDegenerate(t *testing.T) {
	for i := range specimens {
		p := &specimens[i]
		for _, tt := range spoils {
			t.Run(p.kind+", "+tt.name, func(t *testing.T) {
				for k := range p.side {
					d := p.design(t)
					tt.spoil(d, k)
					checkSane(t, d, 0)
				}
			})
		}
	}
}

// spoils are ways to spoil a design by its left point k.
var spoils = []struct {
	name  string
	spoil func(d *solver.Design, k int)
}{
	{"all points one", func(d *solver.Design, k int) {
		for i := range d.Points[solver.Left] {
			d.Points[solver.Left][i] = d.Points[solver.Left][k]
		}
	}},
	{"all points in line", func(d *solver.Design, k int) {
		for i := range d.Points[solver.Left] {
			d.Points[solver.Left][i] = solver.Vec{X: 3, Y: float64(300 + 40*i), Z: float64(200 + 30*i)}
		}
	}},
	{"all points in a plane", func(d *solver.Design, k int) {
		for _, s := range solver.Sides {
			for i := range d.Points[s] {
				d.Points[s][i].X = float64(k)
			}
		}
	}},
	{"on the axis of two others", func(d *solver.Design, k int) {
		l := d.Points[solver.Left]
		a, b := l[(k+1)%len(l)], l[(k+2)%len(l)]
		l[k] = solver.Vec{X: 2*a.X - b.X, Y: 2*a.Y - b.Y, Z: 2*a.Z - b.Z}
	}},
	{"inside out", func(d *solver.Design, k int) {
		d.Points[solver.Left], d.Points[solver.Right] = d.Points[solver.Right], d.Points[solver.Left]
	}},
	{"upside down", func(d *solver.Design, k int) {
		for i := range d.Points[solver.Left] {
			d.Points[solver.Left][i].Z *= -1
		}
	}},
	{"far away", func(d *solver.Design, k int) { d.Points[solver.Left][k].X = 9e4 }},
	{"too far away", func(d *solver.Design, k int) { d.Points[solver.Left][k].Y = 1e300 }},
	{"not a number", func(d *solver.Design, k int) { d.Points[solver.Left][k].Z = math.NaN() }},
	{"tiny", func(d *solver.Design, k int) {
		for i, v := range d.Points[solver.Left] {
			d.Points[solver.Left][i] = solver.Vec{X: v.X / 500, Y: v.Y / 500, Z: v.Z / 500}
		}
	}},
}

// FuzzSweep moves random axles of every kind, spoiled or not.
func FuzzSweep(f *testing.F) {
	for i := range specimens {
		f.Add(uint8(i), uint64(i), 20.0, 5.0, uint8(255), uint8(0))
	}
	f.Add(uint8(0), uint64(7), 120.0, -30.0, uint8(3), uint8(2))
	f.Add(uint8(4), uint64(8), 150.0, 12.0, uint8(4), uint8(1))
	f.Fuzz(func(t *testing.T, kind uint8, seed uint64, spread, steer float64, spoil, point uint8) {
		p := &specimens[int(kind)%len(specimens)]
		d := p.design(t)
		if math.Abs(spread) <= 400 {
			scatter(rand.New(rand.NewPCG(seed, 1)), d, spread)
		}
		if int(spoil) < len(spoils) {
			spoils[spoil].spoil(d, int(point)%len(d.Points[solver.Left]))
		}
		if p.gear.Kind == solver.CentreLink {
			steer /= 100
		}
		checkSane(t, d, steer)
	})
}
