package engine

import (
	"math"
	"testing"
)

// TestAttitudeHeave checks that a sweep about a heave is the sweep further up.
func TestAttitudeHeave(t *testing.T) {
	d := document(t, "")
	plain := sweepOf(t, d, SweepOptions{Candidate: "base"}).Sweeps[0]
	heaved := sweepOf(t, d, SweepOptions{Candidate: "base", Attitude: Attitude{Heave: 10}}).Sweeps[0]
	for i := range plain.Positions[:9] {
		near(t, "toe", heaved.Positions[i].Toe, plain.Positions[i+1].Toe, 1e-9)
	}
}

// TestAttitudeRoll checks the sign and the size of a roll: positive lowers the
// right side, so the right wheel stands higher in the body.
func TestAttitudeRoll(t *testing.T) {
	got := sweepOf(t, document(t, ""), SweepOptions{Candidate: "base", Attitude: Attitude{Roll: 1}})
	level := sweepOf(t, document(t, ""), SweepOptions{Candidate: "base"})
	for i, sign := range []float64{-1, 1} {
		rise := got.Sweeps[i].Positions[4].WheelCentre[2] - level.Sweeps[i].Positions[4].WheelCentre[2]
		// Half the track at the ground, to the millimetre that camber moves it.
		want := sign * 750 * math.Tan(math.Pi/180)
		near(t, got.Sweeps[i].Side+" wheel's rise", rise, want, 0.1)
	}
}
