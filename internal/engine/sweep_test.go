package engine

import (
	"context"
	"errors"
	"fmt"
	"math"
	"testing"

	"toewright/internal/study"
)

func sweepOf(t *testing.T, d *study.Document, o SweepOptions) *SweepResult {
	t.Helper()
	got, err := Sweep(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestSweepOrder(t *testing.T) {
	got := sweepOf(t, document(t, ""), SweepOptions{Motion: "roll", Attitude: Attitude{Steer: 7}})
	want := []string{"base left", "base right", "low ball left", "low ball right", "caster 6 left", "caster 6 right"}
	if len(got.Sweeps) != len(want) {
		t.Fatalf("%d sweeps, want %d", len(got.Sweeps), len(want))
	}
	for i, s := range got.Sweeps {
		if who := s.Candidate + " " + s.Side; who != want[i] || s.Motion != "roll" || s.Steer != 7 || s.Reach != nil {
			t.Errorf("sweep %d = %s, %s, steer %g, reach %v; want %s, roll, 7", i, who, s.Motion, s.Steer, s.Reach, want[i])
		}
		if first, last := s.Positions[0].Travel, s.Positions[9].Travel; first != -40 || last != 50 {
			t.Errorf("%s runs from %g to %g, want -40 to 50", want[i], first, last)
		}
	}
}

func TestSweepOfOneCandidate(t *testing.T) {
	for _, name := range []string{study.BaseName, "low ball"} {
		got := sweepOf(t, document(t, ""), SweepOptions{Candidate: name})
		if len(got.Sweeps) != 2 || got.Sweeps[0].Candidate != name || got.Sweeps[1].Candidate != name {
			t.Errorf("candidate %q: %d sweeps of %q", name, len(got.Sweeps), got.Sweeps[0].Candidate)
		}
	}
}

// TestSweepKeepsSetpoints checks that candidates stand at their own static values.
func TestSweepKeepsSetpoints(t *testing.T) {
	for _, s := range sweepOf(t, document(t, ""), SweepOptions{}).Sweeps {
		rest := s.Positions[4]
		if rest.Travel != 0 {
			t.Fatalf("position 4 is at %g, want 0", rest.Travel)
		}
		near(t, s.Candidate+" toe", rest.Toe, 0.1, 1e-9)
		near(t, s.Candidate+" camber", rest.Camber, -0.7, 1e-9)
		near(t, s.Candidate+" half-track change", rest.HalfTrackChange, 0, 1e-9)
		if s.Candidate == "caster 6" {
			near(t, "caster", float64(rest.Caster), 6, 1e-9)
		}
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

// TestSweepInInches checks that the same car in inches gives the same angles and
// its lengths in inches, travel without rounding.
func TestSweepInInches(t *testing.T) {
	mm := document(t, "")
	mm.Travel = &study.Travel{Bump: 2 * 25.4, Droop: 25.4, Step: 0.3 * 25.4}
	in := document(t, "")
	in.Units = study.Inch
	in.Vehicle = study.Vehicle{Wheelbase: mm.Vehicle.Wheelbase / 25.4, TyreRadius: mm.Vehicle.TyreRadius / 25.4}
	for key, p := range in.Suspension.Left.Points {
		in.Suspension.Left.Points[key] = study.Vec3{p[0] / 25.4, p[1] / 25.4, p[2] / 25.4}
	}
	in.Travel = &study.Travel{Bump: 2, Droop: 1, Step: 0.3}
	metric, imperial := sweepOf(t, mm, SweepOptions{Candidate: "base"}), sweepOf(t, in, SweepOptions{Candidate: "base"})
	for i, p := range metric.Sweeps[0].Positions {
		q := imperial.Sweeps[0].Positions[i]
		near(t, "toe", q.Toe, p.Toe, 1e-9)
		near(t, "wheel centre", q.WheelCentre[1]*25.4, p.WheelCentre[1], 1e-7)
		near(t, "trail", float64(q.Trail)*25.4, float64(p.Trail), 1e-7)
		near(t, "roll-centre height", float64(q.RollCentreHeight)*25.4, float64(p.RollCentreHeight), 1e-6)
		near(t, "toe rate", float64(q.ToeRate), float64(p.ToeRate)*25.4, 1e-9)
		if want := max(-1, min(float64(i-4)*0.3, 2)); q.Travel != want {
			t.Errorf("travel %d = %.17g in, want %.17g", i, q.Travel, want)
		}
	}
}

// TestSweepPartialReach asks for more travel than the linkage has.
func TestSweepPartialReach(t *testing.T) {
	d := document(t, "")
	d.Travel = &study.Travel{Bump: 400, Droop: 20, Step: 5}
	s := sweepOf(t, d, SweepOptions{Candidate: "base"}).Sweeps[0]
	if s.Reach == nil || s.Reach.Bump == nil || s.Reach.Droop != nil || s.Reach.Link == "" {
		t.Fatalf("reach = %+v, want a lock in bump alone, with its link", s.Reach)
	}
	last := s.Positions[len(s.Positions)-1].Travel
	if !(last <= *s.Reach.Bump && *s.Reach.Bump < last+5) {
		t.Errorf("last position at %g, lock at %g: want the last step before it", last, *s.Reach.Bump)
	}
	if first := s.Positions[0].Travel; first != -20 {
		t.Errorf("first position at %g, want -20", first)
	}
}

func TestSweepErrors(t *testing.T) {
	tests := []struct {
		name   string
		change func(*study.Document)
		o      SweepOptions
		fault  Fault
		key    string
		part   string
	}{
		{"unknown candidate", nil, SweepOptions{Candidate: "high"}, Wrong, "candidate", `"low ball"`},
		{"unknown motion", nil, SweepOptions{Motion: "up"}, Wrong, "motion", "both"},
		{"heave no number", nil, SweepOptions{Attitude: Attitude{Heave: math.NaN()}}, Wrong, "heave", "NaN"},
		{"rolled over", nil, SweepOptions{Attitude: Attitude{Roll: 80}}, Wrong, "roll", "80"},
		{"steer no number", nil, SweepOptions{Attitude: Attitude{Steer: math.Inf(1)}}, Wrong, "steer", "is not a number"},
		{"steer out of reach", nil, SweepOptions{Attitude: Attitude{Steer: 700}}, Unsolvable, "", "tie rod"},
		{"no window", func(d *study.Document) { d.Travel = &study.Travel{Step: 1} }, SweepOptions{}, Wrong, "travel", "bump"},
		{"step too fine", func(d *study.Document) { d.Travel.Step = 1e-6 }, SweepOptions{}, Wrong, "travel.step", "larger"},
		{"static position out of reach", func(d *study.Document) { d.Candidates[0].Changes = study.Changes{"lowerBallJointHeight": 700} },
			SweepOptions{}, Unsolvable, "", `candidate "low ball" at travel 0`},
		{"points that coincide", func(d *study.Document) {
			d.Suspension.Left.Points["tieRodOuter"] = d.Suspension.Left.Points["tieRodInner"]
		}, SweepOptions{}, Wrong, "tieRodOuter@left", "no length"},
		{"setting out of proportion", func(d *study.Document) { d.Candidates[1].Changes["caster"] = 90 },
			SweepOptions{}, Wrong, "caster", `candidate "caster 6"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := document(t, "")
			if tt.change != nil {
				tt.change(d)
			}
			_, err := Sweep(t.Context(), d, tt.o)
			wantError(t, err, tt.fault, tt.key, tt.part)
		})
	}
}

func TestSweepRefusesTooMuch(t *testing.T) {
	d := document(t, "")
	d.Travel.Step = 0.1
	for i := range 200 {
		d.Candidates = append(d.Candidates, study.Candidate{Name: fmt.Sprint(i)})
	}
	_, err := Sweep(t.Context(), d, SweepOptions{})
	wantError(t, err, Wrong, "travel.step", "positions")
	if got := sweepOf(t, d, SweepOptions{Candidate: "7"}); len(got.Sweeps[0].Positions) != 901 {
		t.Errorf("one candidate: %d positions, want 901", len(got.Sweeps[0].Positions))
	}
}

func TestSweepCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := Sweep(ctx, document(t, ""), SweepOptions{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled sweep: %v", err)
	}
}
