package solver_test

import (
	"path/filepath"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// caseOfEachKind names a case of each suspension and gear.
var caseOfEachKind = []string{
	"dw01_saloon_rear_steer.json", "dw07_large_caster.json", "st01_hatch_rear_steer.json",
	"ml01_front_virtual_axis.json", "cl01_dw03.json", "sa01_cross_steer_right_arm.json",
}

// TestStudTurnsWithSetpoints: an outer stud is fixed in the knuckle and turns with it
// through every setpoint that is re-solved. The stud laid through two points of the
// knuckle stands as those points do.
func TestStudTurnsWithSetpoints(t *testing.T) {
	for _, file := range caseOfEachKind {
		c := loadCase(t, filepath.Join("../testdata/cases", file))
		d := c.Study.design(t)
		for _, set := range []struct {
			key   string
			value float64
		}{{"caster", 9}, {"camber", -3}, {"toe", 1}, {"rideHeight", -20}, {"rideHeight", 15}, {"tieRodOuterHeight", 0}} {
			if set.key == "camber" && d.Kind.CommonPoints != nil {
				continue // an axle's beam is not re-set in camber
			}
			t.Run(file+"/"+set.key, func(t *testing.T) {
				testStudTurns(t, d, assembled(t, d, map[string]float64{set.key: set.value}))
			})
		}
	}
}

func testStudTurns(t *testing.T, d *solver.Design, x *solver.Axle) {
	at, ball := knucklePoints(d.Kind)
	file := assembled(t, d, nil)
	j := x.Joints()
	for _, s := range solver.Sides {
		j.Outer[s] = solver.Joint{Axis: r3.Sub(file.StaticPoint(s, ball), file.StaticPoint(s, at)), Inline: true}
	}
	out := swept(t, x, solver.SweepInput{Travels: []float64{-30, 0, 20}, Joints: j})
	var now solver.Placed
	for i, travel := range []float64{-30, 0, 20} {
		if err := x.Place(solver.NewWorkspace(), [2]float64{travel, travel}, 0, &now); err != nil {
			t.Fatal(err)
		}
		for _, s := range solver.Sides {
			rod := r3.Sub(now.Side[s][ball], otherEnd(d.Kind, &now, s))
			stud := r3.Sub(now.Side[s][ball], now.Side[s][at])
			near(t, s.String()+" outer", out[s].Positions[i].Joints.Outer.Degrees(), angleBetween(rod, stud), 1e-6)
		}
	}
}

// knucklePoints returns the places of a point of the knuckle, or of its kingpin, and of
// the outer ball.
func knucklePoints(k *solver.Kind) (at, ball int) {
	at = -1
	for i, h := range k.SidePoints {
		switch {
		case h.Role == solver.TieRodOuterRole:
			ball = i
		case at < 0 && (h.Body == solver.Knuckle || h.Role == solver.LowerBallRole):
			at = i
		}
	}
	return at, ball
}

// otherEnd returns the tie rod's other end: of an axle the ball on the other arm.
func otherEnd(k *solver.Kind, p *solver.Placed, s solver.Side) solver.Vec {
	for i, h := range k.SidePoints {
		if h.Role == solver.TieRodInnerRole {
			return p.Side[s][i]
		}
	}
	_, ball := knucklePoints(k)
	return p.Side[1-s][ball]
}

// TestUsualJointsAreMirrored: on a mirror-symmetric car with a centre link both sides'
// joints stand alike straight ahead, whichever hand the pitman arm stands on.
func TestUsualJointsAreMirrored(t *testing.T) {
	for _, hand := range solver.Sides {
		c := loadCase(t, "../testdata/cases/cl01_dw03.json")
		d := c.Study.design(t)
		g := &d.Gear
		g.PitmanAxis = solver.Vec{X: 0.05, Y: 0.12, Z: 1}
		g.IdlerAxis = solver.Vec{X: 0.05, Y: -0.12, Z: 1}
		for i := range 2 { // the idler's side is the pitman's mirror image
			p := g.Points[i]
			if (p.Y < 0) != (hand == solver.Right) {
				p.Y = -p.Y
			}
			g.Points[i] = p
			p.Y = -p.Y
			g.Points[2+i] = p
		}
		if hand == solver.Right {
			g.PitmanAxis, g.IdlerAxis = g.IdlerAxis, g.PitmanAxis
		}
		x := assembled(t, d, nil)
		out := swept(t, x, solver.SweepInput{Travels: []float64{-40, 0, 40}, Joints: x.Joints()})
		for i := range out[solver.Left].Positions {
			l, r := &out[solver.Left].Positions[i].Joints, &out[solver.Right].Positions[i].Joints
			near(t, "inner", r.Inner.Degrees(), l.Inner.Degrees(), 1e-9)
			near(t, "outer", r.Outer.Degrees(), l.Outer.Degrees(), 1e-9)
		}
	}
}
