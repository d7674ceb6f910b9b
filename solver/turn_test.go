package solver_test

import (
	"math"
	"strings"
	"testing"

	"toewright/solver"
)

// TestCotRule compares with the outer angles that cot outer - cot inner = w/l
// gives, computed to the digits shown. Lengths in metres.
func TestCotRule(t *testing.T) {
	inner := []float64{5, 10, 20, 30, 40}
	for _, tt := range []struct {
		w, l float64
		want []float64
	}{
		{1.2, 2.7, []float64{4.81375394, 9.28641775, 17.39529776, 24.67661685, 31.43214573}},
		{1.4, 2.6, []float64{4.77611574, 9.14821420, 16.92642184, 23.77009525, 30.02631504}},
		{1.536, 2.7, []float64{4.76406011, 9.10435597, 16.77988913, 23.49000890, 29.59546956}},
	} {
		for i, deg := range inner {
			got := solver.CotRule(solver.Deg(deg), tt.w, tt.l)
			near(t, "CotRule", got.Degrees(), tt.want[i], 1e-8)
		}
	}
	near(t, "square to the car", solver.CotRule(solver.Deg(90), 1.2, 2.7).Degrees(), math.Atan(2.7/1.2)*180/math.Pi, 1e-12)
}

// TestTurn sorts the wheels into inner and outer.
func TestTurn(t *testing.T) {
	l, r := solver.Deg(20), solver.Deg(18)
	for _, tt := range []struct {
		name  string
		wheel [2]solver.Angle
		want  solver.Turn
	}{
		{"to the left", [2]solver.Angle{l, r}, solver.Turn{Inner: l, Outer: r, ToLeft: true}},
		{"to the right", [2]solver.Angle{-r, -l}, solver.Turn{Inner: l, Outer: r}},
	} {
		if got := solver.NewTurn(tt.wheel); got != tt.want {
			t.Errorf("%s: NewTurn = %+v, want %+v", tt.name, got, tt.want)
		}
		near(t, "toe-out", solver.NewTurn(tt.wheel).ToeOut().Degrees(), 2, 1e-12)
	}
}

// TestAckermann: by the rule 100 %, parallel 0 %, the other way round negative.
func TestAckermann(t *testing.T) {
	i := solver.Deg(25)
	o := solver.CotRule(i, 1400, 2600)
	for _, tt := range []struct {
		name  string
		outer solver.Angle
		want  float64
	}{
		{"by the rule", o, 100}, {"half way", (i + o) / 2, 50}, {"parallel", i, 0}, {"anti", 2*i - o, -100},
	} {
		near(t, tt.name, solver.Turn{Inner: i, Outer: tt.outer}.Ackermann(1400, 2600), tt.want, 1e-9)
	}
}

// TestTurningCircle compares with the circles about the point where all axes meet
// when the wheels are steered by the cot rule and stand on their kingpins.
func TestTurningCircle(t *testing.T) {
	const pivot, track, wheelbase = 1300, 1500, 2500
	i := solver.Deg(35)
	turn := solver.Turn{Inner: i, Outer: solver.CotRule(i, pivot, wheelbase)}
	outer := math.Hypot(wheelbase, wheelbase/math.Tan(float64(i))+pivot) // to the outer kingpin
	near(t, "on the kingpins", turn.TurningCircle(pivot, pivot, wheelbase), 2*outer, 1e-9)
	near(t, "outside them", turn.TurningCircle(track, pivot, wheelbase), 2*outer+track-pivot, 1e-9)
}

// TestTurnNeedsWheelbase names the key that is missing.
func TestTurnNeedsWheelbase(t *testing.T) {
	d := rillDesign(t)
	d.Wheelbase = 0
	x := assembled(t, d, nil)
	if _, err := x.Ackermann(solver.Turn{}); err == nil || !strings.Contains(err.Error(), "vehicle.wheelbase") {
		t.Errorf("Ackermann: error %v, want one that names vehicle.wheelbase", err)
	}
	if _, err := x.TurningCircle(solver.Turn{}); err == nil || !strings.Contains(err.Error(), "vehicle.wheelbase") {
		t.Errorf("TurningCircle: error %v, want one that names vehicle.wheelbase", err)
	}
}

// TestKingpinTrack compares with Rill's kingpin trace at the ground,
// y = 0.76298833 m (recomputed; printed by the listing).
func TestKingpinTrack(t *testing.T) {
	d := rillDesign(t)
	d.TyreRadius = 284.97222 // height of that trace
	near(t, "kingpin track", assembled(t, d, nil).KingpinTrack(), 2*762.98833, 2e-5)
}

// TestSteeringRatio: 50 mm of rack per turn and 0.4 deg per mm make 18 to 1.
func TestSteeringRatio(t *testing.T) {
	near(t, "ratio", solver.SteeringRatio(float64(solver.Deg(0.4)), 50), 18, 1e-12)
}
