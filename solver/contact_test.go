package solver_test

import (
	"math"
	"strings"
	"testing"

	"toewright/solver"
)

// contactFiles are cars of every kind, cambered and steered.
var contactFiles = []string{
	"dw01_saloon_rear_steer.json", "dw05_antidive_skewed_axes.json", "st01_hatch_rear_steer.json",
	"ml01_front_virtual_axis.json", "sw01_split_beam.json", "sa01_cross_steer_right_arm.json",
}

// lowestPoint returns the height of a wheel's lowest point from its spin axis: the
// centre less the tyre's radius along the line of fall in the wheel's plane.
func lowestPoint(centre, spin solver.Vec, radius float64) float64 {
	return centre.Z - radius*math.Sqrt(1-spin.Z*spin.Z)
}

// TestSweepAtContact measures the contact of each position by the spin axis that
// another call gives, at every motion and attitude, both wheels.
func TestSweepAtContact(t *testing.T) {
	for _, file := range contactFiles {
		c := loadCase(t, "../testdata/cases/"+file)
		d := c.Study.design(t)
		x := c.Study.candidate(t, d, "base")
		steer := 8.0
		if x.Design().Gear.Quantity() == solver.AngleQuantity {
			steer = float64(solver.Deg(3))
		}
		if d.Gear.Kind == solver.NoGear {
			steer = 0
		}
		for _, motion := range []solver.Motion{solver.BothWheels, solver.LeftWheel, solver.RightWheel, solver.RollMotion} {
			for _, from := range []solver.Attitude{{}, {Steer: steer}, {Heave: 6, Roll: -4, Steer: -steer}} {
				checkContacts(t, file, x, solver.SweepInput{Travels: []float64{-31.7, -10, 0, 3, 28}, Motion: motion, From: from})
			}
		}
	}
}

func checkContacts(t *testing.T, file string, x *solver.Axle, in solver.SweepInput) {
	t.Helper()
	ws := solver.NewWorkspace()
	var out [2]solver.Curve
	if err := x.SweepAtContact(ws, &in, &out); err != nil {
		t.Fatal(file, err)
	}
	var home, now solver.Placed
	if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
		t.Fatal(err)
	}
	for i, travel := range in.Travels {
		at := [2]float64{ // of the wheel centres
			out[0].Positions[i].WheelCentre.Z - home.Wheel[0].WheelCentre.Z,
			out[1].Positions[i].WheelCentre.Z - home.Wheel[1].WheelCentre.Z,
		}
		if err := x.Place(ws, at, in.From.Steer, &now); err != nil {
			t.Fatal(file, err)
		}
		asked := [...][2]float64{{travel, travel}, {travel, 0}, {0, travel}, {travel, -travel}}[in.Motion]
		asked[0] += in.From.Heave - in.From.Roll
		asked[1] += in.From.Heave + in.From.Roll
		for _, s := range solver.Sides {
			p := &out[s].Positions[i]
			got := lowestPoint(p.WheelCentre, now.Spin[s], x.TyreRadius()) -
				lowestPoint(home.Wheel[s].WheelCentre, home.Spin[s], x.TyreRadius())
			near(t, file+": contact of the "+s.String()+" wheel", got, asked[s], 1e-9)
			near(t, file+": toe", p.Toe.Degrees(), now.Wheel[s].Toe.Degrees(), 1e-9)
			near(t, file+": travel", p.Travel, travel, 0)
		}
	}
}

// TestSweepAtContactRates compares the slope of the toe with a difference.
func TestSweepAtContactRates(t *testing.T) {
	const h = 1e-3
	for _, file := range contactFiles {
		c := loadCase(t, "../testdata/cases/"+file)
		x := c.Study.candidate(t, c.Study.design(t), "base")
		for _, motion := range []solver.Motion{solver.BothWheels, solver.RollMotion} {
			in := solver.SweepInput{Travels: []float64{20 - h, 20, 20 + h}, Motion: motion, Instant: true}
			var out [2]solver.Curve
			if err := x.SweepAtContact(solver.NewWorkspace(), &in, &out); err != nil {
				t.Fatal(file, err)
			}
			for _, s := range solver.Sides {
				p := out[s].Positions
				near(t, file+" "+s.String()+": slope", p[1].Instant.ToeRate, float64(p[2].Toe-p[0].Toe)/(2*h), 1e-9)
			}
		}
	}
}

// TestSweepAtContactLock ends where the linkage locks, wherever the contact is then.
func TestSweepAtContactLock(t *testing.T) {
	for _, tt := range []lockCase{steepWishbone(), shortRod(), steepStrut(), shortPanhard()} {
		d := *tt.axle(t).Design()
		d.TyreRadius = 300
		x, ws := assembled(t, &d, nil), solver.NewWorkspace()
		in := solver.SweepInput{Travels: []float64{-300, -5, 0, 5, 300}}
		var centre, contact [2]solver.Curve
		if err := x.Sweep(ws, &in, &centre); err != nil {
			t.Fatal(err)
		}
		if err := x.SweepAtContact(ws, &in, &contact); err != nil {
			t.Fatal(err)
		}
		g := solver.TravelGauge{Reading: solver.ContactReading}
		for _, s := range solver.Sides {
			a, b := &centre[s].Reach, &contact[s].Reach
			for _, end := range []struct {
				ends          bool
				centre, found float64
				link, want    string
			}{{a.BumpEnds && !a.BumpUnsure, a.Bump, b.Bump, b.BumpLink, a.BumpLink}, {a.DroopEnds && !a.DroopUnsure, -a.Droop, -b.Droop, b.DroopLink, a.DroopLink}} {
				if !end.ends {
					continue
				}
				want, err := x.ReadTravel(ws, s, &g, end.centre*(1-1e-6))
				if err != nil {
					t.Fatal(tt.name, err)
				}
				if math.Abs(want) < 300 {
					near(t, tt.name+": lock by the contact", end.found, want, 0.1) // which moves as the root of the way left
				}
				if math.Abs(want) < 300 && end.link != end.want {
					t.Errorf("%s: %s ends the travel, want %s", tt.name, end.link, end.want)
				}
			}
			for _, p := range contact[s].Positions {
				if b.BumpEnds && !(p.Travel <= b.Bump) || b.DroopEnds && !(p.Travel >= -b.Droop) {
					t.Errorf("%s: position at %g mm beyond the reach %+v", tt.name, p.Travel, b)
				}
			}
		}
	}
}

// TestSweepAtContactRefuses names what is missing.
func TestSweepAtContactRefuses(t *testing.T) {
	d := rillDesign(t)
	d.TyreRadius = 0
	var out [2]solver.Curve
	err := assembled(t, d, nil).SweepAtContact(solver.NewWorkspace(), &solver.SweepInput{Travels: []float64{0}}, &out)
	if err == nil || !strings.Contains(err.Error(), "tyreRadius") {
		t.Errorf("error %v, want one that names tyreRadius", err)
	}
}

// travelChanges are changes of every stage: coordinates, parts, setpoints.
var travelChanges = []string{
	"lowerBallJointHeight", "upperBallJointHeight", "tieRodOuterHeight", "steeringArmLength", "steeringArmOffset",
	"wheelCentre.x", "wheelCentre.z", "lowerBallJoint.z", "lowerFrontPivot.z", "rideHeight", "caster", "camber", "toe",
}

// TestReadTravelOfParts: whatever is fitted and set, a gauge that counts from the
// static height reads 0 there, moves by what the points of that car do, and the
// damper's mount stays where it is in the part that carries it.
func TestReadTravelOfParts(t *testing.T) {
	cases := append(gaugeCases[2:len(gaugeCases):len(gaugeCases)],
		gaugeCase{"contact", "dw05_antidive_skewed_axes.json", solver.TravelGauge{Reading: solver.ContactReading}},
		gaugeCase{"contact of a strut", "st01_hatch_rear_steer.json", solver.TravelGauge{Reading: solver.ContactReading}})
	ws := solver.NewWorkspace()
	for _, tt := range cases {
		c := loadCase(t, "../testdata/cases/"+tt.file)
		d := c.Study.design(t)
		for _, key := range travelChanges {
			p, _, err := solver.FindParameter(d, key)
			if err != nil {
				continue // this suspension has no such point
			}
			v := 9.0
			if p.Quantity == solver.AngleQuantity {
				v = float64(solver.Deg(2))
			}
			fitted := []solver.Change{{Parameter: p, Value: v}}
			if !p.Coordinate() { // with the file's points off as well
				for _, k := range []string{"wheelCentre.y", "lowerRearPivot.z"} {
					if q, _, err := solver.FindParameter(d, k); err == nil {
						fitted = append(fitted, solver.Change{Parameter: q, Value: -6})
					}
				}
			}
			x, err := solver.Assemble(d, fitted, solver.HoldAll)
			if err != nil {
				continue // such as the camber of a solid axle
			}
			for _, s := range solver.Sides {
				g := tt.gauge
				if s == solver.Right && !x.Solid() {
					g.Damper.Body, g.Damper.Wheel = mirrored(g.Damper.Body), mirrored(g.Damper.Wheel)
				}
				name := tt.name + " with " + key + " " + s.String()
				if g.Reading != solver.DamperReading {
					travel, err := x.TravelOf(ws, s, &g, g.Zero)
					if err != nil {
						t.Fatal(name, err)
					}
					near(t, name+": travel of the zero", travel, 0, 1e-9)
				}
				checkReading(t, name, d, fitted, x, s, &g)
			}
		}
	}
}

// checkReading compares a reading at 30 mm with the places of points.
func checkReading(t *testing.T, name string, d *solver.Design, fitted []solver.Change, x *solver.Axle, s solver.Side, g *solver.TravelGauge) {
	t.Helper()
	if x.Solid() || x.Design().Kind.Name == "multi-link" {
		return // TestReadTravel has them
	}
	ws := solver.NewWorkspace()
	var home, now solver.Placed
	if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
		t.Fatal(err)
	}
	if err := x.Place(ws, [2]float64{30, 30}, 0, &now); err != nil {
		t.Fatal(err)
	}
	got, err := x.ReadTravel(ws, s, g, 30)
	if err != nil {
		t.Fatal(name, err)
	}
	switch g.Reading {
	case solver.LowerBallReading:
		near(t, name, got-g.Zero, placed(x, s, &now, "lowerBallJoint").Z-placed(x, s, &home, "lowerBallJoint").Z, 1e-8)
		return
	case solver.ContactReading:
		near(t, name, got-g.Zero, lowestPoint(now.Wheel[s].WheelCentre, now.Spin[s], x.TyreRadius())-
			lowestPoint(home.Wheel[s].WheelCentre, home.Spin[s], x.TyreRadius()), 1e-8)
		return
	}
	// The mount stands where it is stated in the file's own position, coordinates
	// changed and nothing else.
	var moved []solver.Change
	for _, c := range fitted {
		if c.Parameter.Coordinate() {
			moved = append(moved, c)
		}
	}
	y, err := solver.Assemble(d, moved, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	if err := y.Place(ws, [2]float64{}, 0, &home); err != nil {
		t.Fatal(err)
	}
	near(t, name, got, byFrames(x, s, g, &home, &now), 1e-8)
}
