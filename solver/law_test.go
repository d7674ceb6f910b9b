package solver_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// Limits within which laws hold: what rounding leaves of a pose whose links are
// held to 1e-10 mm, for linkages a little out of true.
const (
	lawAngle  = 2e-9 // deg
	lawLength = 2e-8 // mm
)

// carsPerLaw is the number of random axles of each specimen that a law is tried
// on, and lawSpread how far their points are scattered, mm.
const (
	carsPerLaw = 25
	lawSpread  = 25
)

// lawTravels are the travels at which a law is tried, mm.
var lawTravels = []float64{-45, -20, 0, 15, 40}

// eachCar runs check on random axles of every kind and gear.
func eachCar(t *testing.T, seed uint64, check func(t *testing.T, d *solver.Design, steer float64)) {
	for i := range specimens {
		p := &specimens[i]
		t.Run(fmt.Sprintf("%s, %s", p.kind, p.gear.Kind), func(t *testing.T) {
			r := seeded(seed)
			for range carsPerLaw {
				d := p.design(t)
				scatter(r, d, lawSpread)
				steer := 24 * (2*r.Float64() - 1)
				if p.gear.Kind == solver.CentreLink {
					steer /= 150
				}
				check(t, d, steer)
			}
		})
	}
}

// moved returns the design with every point and every direction mapped.
func moved(d *solver.Design, point, direction func(solver.Vec) solver.Vec) *solver.Design {
	m := *d
	for _, s := range solver.Sides {
		m.Points[s] = nil
		for _, v := range d.Points[s] {
			m.Points[s] = append(m.Points[s], point(v))
		}
	}
	m.Common = nil
	for _, v := range d.Common {
		m.Common = append(m.Common, point(v))
	}
	for i, v := range d.Gear.Points {
		m.Gear.Points[i] = point(v)
	}
	m.Gear.Axis, m.Gear.PitmanAxis, m.Gear.IdlerAxis = direction(d.Gear.Axis), direction(d.Gear.PitmanAxis), direction(d.Gear.IdlerAxis)
	return &m
}

// lawSweep sweeps a design, steered, through travels.
func lawSweep(t *testing.T, d *solver.Design, steer float64, m solver.Motion, travels []float64) [2]solver.Curve {
	t.Helper()
	return swept(t, assembled(t, d, nil), solver.SweepInput{
		Travels: travels, Motion: m, From: solver.Attitude{Steer: steer}, Ground: true})
}

// sameAngles compares the angles of two curves; turn is how much toe the second
// has more.
func sameAngles(t *testing.T, a, b *solver.Curve, turn float64) {
	t.Helper()
	for i := range a.Positions {
		p, q := &a.Positions[i], &b.Positions[i]
		near(t, "toe", q.Toe.Degrees()-turn, p.Toe.Degrees(), lawAngle)
		near(t, "camber", q.Camber.Degrees(), p.Camber.Degrees(), lawAngle)
		if turn == 0 {
			near(t, "caster", q.Caster.Degrees(), p.Caster.Degrees(), lawAngle)
			near(t, "kingpin inclination", q.KingpinInclination.Degrees(), p.KingpinInclination.Degrees(), lawAngle)
		}
	}
}

// TestLawMirror: the mirror image of a car, steered to the other side, does with
// its right wheel what the car does with its left.
func TestLawMirror(t *testing.T) {
	eachCar(t, 11, func(t *testing.T, d *solver.Design, steer float64) {
		m := moved(d, mirrored, mirrored)
		m.Points[solver.Left], m.Points[solver.Right] = m.Points[solver.Right], m.Points[solver.Left]
		m.Toe[0], m.Toe[1] = d.Toe[1], d.Toe[0]
		m.Camber[0], m.Camber[1] = d.Camber[1], d.Camber[0]
		m.DragSide = solver.Right - d.DragSide
		other := -steer
		if d.Gear.Kind == solver.Rack {
			other = steer // along the mirrored axis
		}
		for _, motions := range [][2]solver.Motion{{solver.BothWheels, solver.BothWheels}, {solver.LeftWheel, solver.RightWheel}} {
			a := lawSweep(t, d, steer, motions[0], lawTravels)
			b := lawSweep(t, m, other, motions[1], lawTravels)
			for _, s := range solver.Sides {
				o := solver.Right - s
				sameAngles(t, &a[s], &b[o], 0)
				for i, p := range a[s].Positions {
					near(t, "wheel centre", r3.Norm(r3.Sub(mirrored(b[o].Positions[i].WheelCentre), p.WheelCentre)), 0, lawLength)
					near(t, "scrub radius", b[o].Positions[i].ScrubRadius, p.ScrubRadius, lawLength)
				}
			}
		}
	})
}

// TestLawTranslation: a car that stands elsewhere does the same.
func TestLawTranslation(t *testing.T) {
	by := solver.Vec{X: 1234.5, Y: -87, Z: 432.1}
	eachCar(t, 12, func(t *testing.T, d *solver.Design, steer float64) {
		m := moved(d, func(v solver.Vec) solver.Vec { return r3.Add(v, by) }, func(v solver.Vec) solver.Vec { return v })
		a, b := lawSweep(t, d, steer, solver.RollMotion, lawTravels), lawSweep(t, m, steer, solver.RollMotion, lawTravels)
		for _, s := range solver.Sides {
			sameAngles(t, &a[s], &b[s], 0)
			for i, p := range a[s].Positions {
				near(t, "wheel centre", r3.Norm(r3.Sub(r3.Sub(b[s].Positions[i].WheelCentre, by), p.WheelCentre)), 0, lawLength)
				near(t, "half-track change", b[s].Positions[i].HalfTrackChange, p.HalfTrackChange, lawLength)
			}
		}
	})
}

// TestLawScale: a car k times as large, moved k times as far, has the same angles
// and k times the distances.
func TestLawScale(t *testing.T) {
	for _, k := range []float64{0.4, 3} {
		eachCar(t, 13, func(t *testing.T, d *solver.Design, steer float64) {
			m := moved(d, func(v solver.Vec) solver.Vec { return r3.Scale(k, v) }, func(v solver.Vec) solver.Vec { return v })
			m.TyreRadius *= k
			var travels []float64
			for _, z := range lawTravels {
				travels = append(travels, k*z)
			}
			far := steer
			if d.Gear.Kind == solver.Rack {
				far *= k
			}
			a, b := lawSweep(t, d, steer, solver.BothWheels, lawTravels), lawSweep(t, m, far, solver.BothWheels, travels)
			for _, s := range solver.Sides {
				sameAngles(t, &a[s], &b[s], 0)
				for i, p := range a[s].Positions {
					near(t, "trail", b[s].Positions[i].Trail/k, p.Trail, lawLength)
					near(t, "wheelbase change", b[s].Positions[i].WheelbaseChange/k, p.WheelbaseChange, lawLength)
				}
			}
		})
	}
}

// TestLawTurn: a car turned about the vertical, gear and all, has its toes changed
// by that turn, the left wheel's inward when the car turns to the right.
func TestLawTurn(t *testing.T) {
	const turn = 4.0 // deg, to the left
	sin, cos := math.Sincos(turn * math.Pi / 180)
	rotate := func(v solver.Vec) solver.Vec { return solver.Vec{X: cos*v.X - sin*v.Y, Y: sin*v.X + cos*v.Y, Z: v.Z} }
	eachCar(t, 14, func(t *testing.T, d *solver.Design, steer float64) {
		m := moved(d, rotate, rotate)
		m.Toe[solver.Left] -= solver.Deg(turn)
		m.Toe[solver.Right] += solver.Deg(turn)
		a, b := lawSweep(t, d, steer, solver.BothWheels, lawTravels), lawSweep(t, m, steer, solver.BothWheels, lawTravels)
		sameAngles(t, &a[solver.Left], &b[solver.Left], -turn)
		sameAngles(t, &a[solver.Right], &b[solver.Right], turn)
	})
}

// TestLawReturn: a car that is raised, or rolled, and brought back by the sweep
// stands as it did.
func TestLawReturn(t *testing.T) {
	eachCar(t, 15, func(t *testing.T, d *solver.Design, steer float64) {
		x := assembled(t, d, nil)
		home := lawSweep(t, d, steer, solver.BothWheels, []float64{0})
		for _, tt := range []struct {
			from   solver.Attitude
			motion solver.Motion
			back   float64
		}{
			{solver.Attitude{Heave: 40, Steer: steer}, solver.BothWheels, -40},
			{solver.Attitude{Heave: -35, Steer: steer}, solver.BothWheels, 35},
			{solver.Attitude{Roll: 30, Steer: steer}, solver.RollMotion, 30},
		} {
			got := swept(t, x, solver.SweepInput{From: tt.from, Motion: tt.motion, Travels: []float64{tt.back}, Ground: true})
			for _, s := range solver.Sides {
				sameAngles(t, &home[s], &got[s], 0)
				near(t, "half-track change", got[s].Positions[0].HalfTrackChange, home[s].Positions[0].HalfTrackChange, lawLength)
			}
		}
	})
}

// heldLength is the largest error of a link's length in any pose, mm.
const heldLength = 1e-9

// TestLawLengths: every link keeps its length, and a strut's axis its mount.
func TestLawLengths(t *testing.T) {
	eachCar(t, 16, func(t *testing.T, d *solver.Design, steer float64) {
		x := assembled(t, d, nil)
		ws := solver.NewWorkspace()
		var p, home solver.Placed
		if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
			t.Fatal(err)
		}
		for _, travel := range [][2]float64{{-60, -60}, {-30, 25}, {10, -12}, {50, 50}} {
			if err := x.Place(ws, travel, steer, &p); err != nil {
				t.Fatal(err)
			}
			if e := x.LinkError(&p); !(math.Abs(e.By) <= heldLength) {
				t.Errorf("%s, %s misses its length by %g mm", e.Side, e.Link, e.By)
			}
			if d.Kind.Name == "strut" {
				near(t, "strut's axis from its mount", mountError(home.Side[solver.Left], p.Side[solver.Left]), 0, heldLength)
			}
		}
	})
}

// mountError returns how far a strut's axis misses its mount: the mount's
// distances from the knuckle's lower ball and tie rod ball against those of the
// axis point that is as far from strutLower.
func mountError(home, now []solver.Vec) float64 {
	const ball, top, lower, tie = 2, 3, 4, 5
	dir := r3.Unit(r3.Sub(home[top], home[lower]))
	on := r3.Add(home[lower], r3.Scale(r3.Norm(r3.Sub(now[top], now[lower])), dir))
	miss := 0.0
	for _, i := range [2]int{ball, tie} {
		miss = math.Max(miss, math.Abs(r3.Norm(r3.Sub(now[top], now[i]))-r3.Norm(r3.Sub(on, home[i]))))
	}
	return miss
}

// TestLawNeighbours: between neighbouring positions the toe changes by what its
// own rate says. A jump from one branch to another would not.
func TestLawNeighbours(t *testing.T) {
	const step = 1.0 // mm
	eachCar(t, 17, func(t *testing.T, d *solver.Design, steer float64) {
		in := solver.SweepInput{From: solver.Attitude{Steer: steer}, Instant: true}
		in.Travels, _ = solver.Grid(130, 130, step)
		var out [2]solver.Curve
		if err := assembled(t, d, nil).Sweep(solver.NewWorkspace(), &in, &out); err != nil {
			t.Fatal(err)
		}
		for _, s := range solver.Sides {
			checkNeighbours(t, out[s].Positions, step)
		}
	})
}

// checkNeighbours holds each change of toe between positions no farther apart than
// step against the rates at its two ends, within what these differ and a quarter.
func checkNeighbours(t *testing.T, ps []solver.Position, step float64) {
	t.Helper()
	for i := 1; i < len(ps); i++ {
		a, b := &ps[i-1], &ps[i]
		gap := b.Travel - a.Travel
		if gap > step {
			continue
		}
		change := float64(b.Toe - a.Toe)
		expected := gap * (a.Instant.ToeRate + b.Instant.ToeRate) / 2
		spread := gap * math.Abs(a.Instant.ToeRate-b.Instant.ToeRate)
		most := gap * math.Max(math.Abs(a.Instant.ToeRate), math.Abs(b.Instant.ToeRate))
		if !(math.Abs(change-expected) <= 0.5*spread+0.25*most+1e-6) {
			t.Errorf("between travels %g and %g the toe changes by %g rad; its rates say %g", a.Travel, b.Travel, change, expected)
		}
	}
}
