package solver_test

import (
	"errors"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

type gaugeCase struct {
	name, file string
	gauge      solver.TravelGauge
}

// gaugeCases are gauges on cars of every kind.
var gaugeCases = []gaugeCase{
	{"hub height", "dw01_saloon_rear_steer.json", solver.TravelGauge{Zero: 340}},
	{"block", "dw01_saloon_rear_steer.json", solver.TravelGauge{Reading: solver.BlockReading, Zero: 200}},
	{"lower ball", "dw05_antidive_skewed_axes.json", solver.TravelGauge{Reading: solver.LowerBallReading, Zero: 55}},
	{"lower ball of a strut", "st01_hatch_rear_steer.json", solver.TravelGauge{Reading: solver.LowerBallReading}},
	{"damper on the lower arm", "dw05_antidive_skewed_axes.json", solver.TravelGauge{Reading: solver.DamperReading,
		Damper: solver.Damper{Body: solver.Vec{X: 30, Y: 420, Z: 600}, Wheel: solver.Vec{X: 10, Y: 560, Z: 230}, On: solver.OnLowerArm}}},
	{"damper on the upper arm", "dw01_saloon_rear_steer.json", solver.TravelGauge{Reading: solver.DamperReading,
		Damper: solver.Damper{Body: solver.Vec{X: -20, Y: 400, Z: 760}, Wheel: solver.Vec{X: -20, Y: 560, Z: 480}, On: solver.OnUpperArm}}},
	{"strut", "st01_hatch_rear_steer.json", solver.TravelGauge{Reading: solver.DamperReading,
		Damper: solver.Damper{Body: solver.Vec{X: -30, Y: 560, Z: 850}, Wheel: solver.Vec{X: 0, Y: 620, Z: 400}}}},
	{"damper on a multi-link's knuckle", "ml01_front_virtual_axis.json", solver.TravelGauge{Reading: solver.DamperReading,
		Damper: solver.Damper{Body: solver.Vec{X: 0, Y: 450, Z: 700}, Wheel: solver.Vec{X: -30, Y: 640, Z: 260}}}},
	{"damper on a swing arm", "sw01_split_beam.json", solver.TravelGauge{Reading: solver.DamperReading,
		Damper: solver.Damper{Body: solver.Vec{X: 20, Y: 520, Z: 700}, Wheel: solver.Vec{X: 0, Y: 560, Z: 260}, On: solver.OnLowerArm}}},
	{"damper on a solid axle", "sa01_cross_steer_right_arm.json", solver.TravelGauge{Reading: solver.DamperReading,
		Damper: solver.Damper{Body: solver.Vec{X: -90, Y: 480, Z: 800}, Wheel: solver.Vec{X: -60, Y: 540, Z: 330}}}},
}

// TestTravelOf reads the gauge at travels and finds them again.
func TestTravelOf(t *testing.T) {
	for _, tt := range gaugeCases {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, "../testdata/cases/"+tt.file)
			x := c.Study.candidate(t, c.Study.design(t), "base")
			ws := solver.NewWorkspace()
			for _, travel := range []float64{-45, -3, 0, 1e-3, 20, 50} {
				reading, err := x.ReadTravel(ws, solver.Left, &tt.gauge, travel)
				if err != nil {
					t.Fatal(err)
				}
				got, err := x.TravelOf(ws, solver.Left, &tt.gauge, reading)
				if err != nil {
					t.Fatal(err)
				}
				near(t, "travel", got, travel, 1e-8)
			}
		})
	}
}

// TestReadTravel compares readings with the places of hardpoints.
func TestReadTravel(t *testing.T) {
	for _, tt := range gaugeCases {
		c := loadCase(t, "../testdata/cases/"+tt.file)
		x := c.Study.candidate(t, c.Study.design(t), "base")
		ws := solver.NewWorkspace()
		var home, now solver.Placed
		if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
			t.Fatal(err)
		}
		if err := x.Place(ws, [2]float64{35, 35}, 0, &now); err != nil {
			t.Fatal(err)
		}
		got, err := x.ReadTravel(ws, solver.Left, &tt.gauge, 35)
		if err != nil {
			t.Fatal(err)
		}
		near(t, tt.name, got, readByHand(x, &tt.gauge, &home, &now), 1e-9)
	}
}

// readByHand returns what the gauge reads at a travel of 35 mm, from the places of
// hardpoints there and at static height.
func readByHand(x *solver.Axle, g *solver.TravelGauge, home, now *solver.Placed) float64 {
	switch {
	case g.Reading == solver.WheelCentreReading:
		return g.Zero + 35
	case g.Reading == solver.BlockReading:
		return g.Zero - 35
	case g.Reading == solver.LowerBallReading:
		return g.Zero + placed(x, 0, now, "lowerBallJoint").Z - placed(x, 0, home, "lowerBallJoint").Z
	case x.Solid(): // four points of the beam
		h, n := beamFrame(home), beamFrame(now)
		p := r3.Add(n[0], turned(h, n, r3.Sub(g.Damper.Wheel, h[0])))
		return r3.Norm(r3.Sub(p, g.Damper.Body))
	}
	return byFrames(x, solver.Left, g, home, now)
}

// byFrames returns a damper's length from the part that carries its mount, by four of
// the part's points at home, where the mount is stated, and now.
func byFrames(x *solver.Axle, s solver.Side, g *solver.TravelGauge, home, now *solver.Placed) float64 {
	var on [4]string
	switch {
	case x.Design().Kind.Name == "swing-arm":
		on = [4]string{"frontPivot", "rearPivot", "kingpinLower"}
	case g.Damper.On == solver.OnLowerArm:
		on = [4]string{"lowerFrontPivot", "lowerRearPivot", "lowerBallJoint"}
	case g.Damper.On == solver.OnUpperArm:
		on = [4]string{"upperFrontPivot", "upperRearPivot", "upperBallJoint"}
	case x.Design().Kind.Name == "strut":
		on = [4]string{"wheelCentre", "strutLower"} // no part moves those in the knuckle
	case x.Design().Kind.Name == "multi-link":
		on = [4]string{"rods.0.outer", "rods.2.outer", "tieRodOuter", "wheelCentre"}
	}
	h, n := frame(x, on, s, home), frame(x, on, s, now)
	for f, p := range map[*[4]solver.Vec]*solver.Placed{&h: home, &n: now} {
		switch {
		case on[2] == "": // with the spin axis
			f[2] = p.Spin[s]
			f[3] = r3.Cross(f[1], f[2])
		case on[3] == "": // an arm, whose legs may get longer: the direction of its ball
			f[1] = r3.Unit(f[1])
			f[2] = r3.Unit(r3.Sub(f[2], r3.Scale(r3.Dot(f[2], f[1]), f[1])))
			f[3] = r3.Cross(f[1], f[2])
		}
	}
	p := r3.Add(n[0], turned(h, n, r3.Sub(g.Damper.Wheel, h[0])))
	return r3.Norm(r3.Sub(p, g.Damper.Body))
}

// beamFrame returns the left kingpin's foot and the vectors to three more points
// of a solid axle's beam.
func beamFrame(p *solver.Placed) [4]solver.Vec {
	f := [4]solver.Vec{p.Side[0][1], p.Side[0][0], p.Side[1][1], p.Common[1]}
	for i := 1; i < 4; i++ {
		f[i] = r3.Sub(f[i], f[0])
	}
	return f
}

// TestReadTravelMirror reads the same on both sides of a symmetric car.
func TestReadTravelMirror(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	g := solver.TravelGauge{Reading: solver.DamperReading, Damper: solver.Damper{
		Body: solver.Vec{X: 10, Y: 420, Z: 300}, Wheel: solver.Vec{X: 5, Y: 600, Z: -120}, On: solver.OnLowerArm}}
	h := g
	h.Damper.Body, h.Damper.Wheel = mirrored(g.Damper.Body), mirrored(g.Damper.Wheel)
	ws := solver.NewWorkspace()
	for _, travel := range []float64{-30, 0, 40} {
		l, err := x.ReadTravel(ws, solver.Left, &g, travel)
		if err != nil {
			t.Fatal(err)
		}
		r, err := x.ReadTravel(ws, solver.Right, &h, travel)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "right", r, l, 1e-9)
	}
}

// TestReadTravelLowered: a car lowered by 25 mm with nothing re-set reads at
// static height what it read at 25 mm of bump.
func TestReadTravelLowered(t *testing.T) {
	for _, tt := range gaugeCases {
		if tt.gauge.Reading != solver.DamperReading {
			continue
		}
		c := loadCase(t, "../testdata/cases/"+tt.file)
		d := c.Study.design(t)
		base := c.Study.candidate(t, d, "base")
		low, err := solver.Assemble(d, []solver.Change{change(t, d, "rideHeight", -25)}, solver.HoldNone)
		if err != nil {
			t.Fatal(err)
		}
		ws := solver.NewWorkspace()
		want, err := base.ReadTravel(ws, solver.Left, &tt.gauge, 35)
		if err != nil {
			t.Fatal(err)
		}
		got, err := low.ReadTravel(ws, solver.Left, &tt.gauge, 10)
		if err != nil {
			t.Fatal(err)
		}
		near(t, tt.name, got, want, 1e-8)
	}
}

// TestTravelOfRefuses what no travel reads and what no part carries.
func TestTravelOfRefuses(t *testing.T) {
	c := loadCase(t, "../testdata/cases/ml01_front_virtual_axis.json")
	x := c.Study.candidate(t, c.Study.design(t), "base")
	ws := solver.NewWorkspace()
	for _, tt := range []struct {
		name, key string
		gauge     solver.TravelGauge
	}{
		{"lower ball of a multi-link", "travelAs", solver.TravelGauge{Reading: solver.LowerBallReading}},
		{"damper on no arm", "damper", solver.TravelGauge{Reading: solver.DamperReading, Damper: solver.Damper{On: solver.OnLowerArm}}},
	} {
		if _, err := x.TravelOf(ws, solver.Left, &tt.gauge, 0); err == nil || !strings.Contains(err.Error(), tt.key) {
			t.Errorf("%s: error %v, want one that names %s", tt.name, err, tt.key)
		}
	}
	swing := assembled(t, specimens[6].design(t), nil)
	if _, err := swing.TravelOf(ws, solver.Left, &solver.TravelGauge{Reading: solver.DamperReading, Damper: solver.Damper{On: solver.OnUpperArm}}, 0); err == nil || !strings.Contains(err.Error(), "upper-arm") {
		t.Errorf("damper on a swing arm's upper arm: error %v, want one that names upper-arm", err)
	}
	y := assembled(t, rillDesign(t), nil)
	_, err := y.TravelOf(ws, solver.Left, &solver.TravelGauge{Reading: solver.LowerBallReading}, 5000)
	var out *solver.ReadingError
	if !errors.As(err, &out) || !(out.Travel > 50) || !(out.End > out.Home) {
		t.Errorf("error %v, want a ReadingError beyond the lock", err)
	}
}
