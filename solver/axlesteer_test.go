package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestRollSteer compares the exact roll steer of an independent suspension and of
// an axle with the mean steer of a body rolled by a tenth of a degree each way.
func TestRollSteer(t *testing.T) {
	for _, file := range []string{"dw01_saloon_rear_steer.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, "../testdata/cases/"+file)
		x := c.Study.candidate(t, c.Study.design(t), "base")
		half := x.HalfTrack(solver.Left)
		h := math.Tan(float64(solver.Deg(0.1))) * half
		out := swept(t, x, solver.SweepInput{Travels: []float64{-2 * h, -h, 0, h, 2 * h}, Motion: solver.RollMotion, Instant: true})
		l, r := out[solver.Left].Positions, out[solver.Right].Positions
		steer := func(i int) float64 { return float64(solver.MeanSteer([2]solver.Angle{l[i].Toe, r[i].Toe})) }
		// The left wheel's travel h is a roll of -0.1 deg.
		want := (8*(steer(1)-steer(3)) - (steer(0) - steer(4))) / (12 * float64(solver.Deg(0.1)))
		near(t, file, solver.RollSteer(&l[2].Instant, &r[2].Instant, half), want, 1e-6)
	}
}

// TestRollSteerSign: a front suspension that toes in on bump steers left, into the
// turn, when the left side of the body rises.
func TestRollSteerSign(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	out := swept(t, x, solver.SweepInput{Travels: []float64{0}, Motion: solver.RollMotion, Instant: true})
	l, r := &out[solver.Left].Positions[0].Instant, &out[solver.Right].Positions[0].Instant
	got := solver.RollSteer(l, r, x.HalfTrack(solver.Left))
	near(t, "roll steer", got, 2.525704797*math.Pi/180/1000*x.HalfTrack(solver.Left), 1e-10)
}

// TestAxleSteerRate: one wheel's bump steers the mean by half its toe, to the
// right for toe-in of the left wheel.
func TestAxleSteerRate(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	out := swept(t, x, solver.SweepInput{Travels: []float64{0}, Motion: solver.LeftWheel, Instant: true})
	l, r := &out[solver.Left].Positions[0].Instant, &out[solver.Right].Positions[0].Instant
	near(t, "deg/m", solver.AxleSteerRate(l, r)*perMetre, -2.525704797/2, 1e-8)
}

// TestToeDrag holds an estimate worked by hand: 0.1 deg on each wheel of 60 kN/rad
// at 30 m/s.
func TestToeDrag(t *testing.T) {
	a := solver.Deg(0.1)
	near(t, "watts", solver.ToeDrag([2]solver.Angle{a, a}, 60e3, 30), 2*60e3*30*math.Pow(math.Pi/1800, 2), 1e-4)
	near(t, "toe-out drags too", solver.ToeDrag([2]solver.Angle{-a, 0}, 60e3, 30), solver.ToeDrag([2]solver.Angle{a, 0}, 60e3, 30), 0)
}

// TestDrift compares with the circle that the car runs on.
func TestDrift(t *testing.T) {
	const wheelbase, run = 2500, 100e3
	a := solver.Deg(0.2)
	radius := wheelbase / math.Tan(float64(a))
	near(t, "drift", solver.Drift(a, wheelbase, run), radius*(1-math.Cos(run/radius)), 1e-6)
	near(t, "to the right", solver.Drift(-a, wheelbase, run), -solver.Drift(a, wheelbase, run), 1e-9)
	near(t, "straight", solver.Drift(0, wheelbase, run), 0, 0)
}
