package solver

import (
	"math"
	"testing"
)

// lockedCorner returns a multi-link corner in its static position, with one rod
// there twice: the wheel has a freedom that no rod holds, and no derivative.
func lockedCorner() *corner {
	c := &corner{n: tieRow, spin: Vec{Y: 1}, axis: axisPoints{upper: Vec{Z: 100}}}
	ends := [4][2]Vec{
		{{X: 110, Y: -350, Z: 270}, {X: 12, Y: -120, Z: 285}}, {{X: -175, Y: -360, Z: 255}, {X: -36, Y: -128, Z: 278}},
		{{X: 180, Y: -420, Z: -125}, {X: 40, Y: -75, Z: -142}}, {{X: -140, Y: -455, Z: -68}, {X: -140, Y: -90, Z: -75}},
	}
	for i, e := range ends {
		c.rods[i] = newRod("", e[0], e[1], Vec{})
	}
	c.tie = c.rods[3]
	return c
}

// TestInstantAtALockIsNone: where the equations are singular no rate is given, and
// not that of another position.
func TestInstantAtALockIsNone(t *testing.T) {
	x := &Axle{tyreRadius: 300}
	ws := NewWorkspace()
	ws.corner = cornerPath{c: lockedCorner(), rate: 1}
	p := Position{Instant: Instant{ToeRate: 1, CamberRate: 2}} // of another
	x.measureKnuckle(ws, &SweepInput{Instant: true}, Left, 0, &p)
	out := &p.Instant
	for name, v := range map[string]float64{
		"toe rate": out.ToeRate, "camber rate": out.CamberRate, "toe curvature": out.ToeCurvature,
		"roll centre height": out.RollCentreHeight, "front centre": out.FrontCentre.Y, "contact rate": out.ContactRate.Y,
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s = %g at a lock, want NaN", name, v)
		}
	}
}
