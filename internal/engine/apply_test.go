package engine

import (
	"context"
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestApplyFit: the study with the fitted hardpoints does what the fit predicts.
func TestApplyFit(t *testing.T) {
	d, _ := simulated(t, "fit01.json")
	f, err := Fit(context.Background(), d, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	applied, err := ApplyFit(d, f)
	if err != nil {
		t.Fatal(err)
	}
	s, err := Sweep(context.Background(), applied, SweepOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	left := s.Sweeps[0]
	for i, p := range f.Cars[0].Positions {
		if got := left.Positions[i].Toe - d.Suspension.Left.Toe; !(math.Abs(got-float64(p.Change)) <= 1e-6) {
			t.Errorf("travel %g: the applied car changes by %.7f deg, the fit says %.7f", p.Travel, got, float64(p.Change))
		}
	}
	for key, v := range f.Fitted {
		name, _, sided := strings.Cut(key, "@")
		if study.IsNuisance(name) || v.Value == 0 {
			continue
		}
		if got := applied.Sources.At("left." + name); got != study.FromFit {
			t.Errorf("%s (of one side: %t) is from %q, want the fit", key, sided, got)
		}
	}
	if got := applied.Sources.At("right.tieRodOuter.z"); got != study.FromFile {
		t.Errorf("a point of the side that was not read is from %q", got)
	}
	if d.Suspension.Right != nil || len(d.Priors) == 0 {
		t.Error("the study itself was changed")
	}
	before, err := Sweep(context.Background(), d, SweepOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := s.Sweeps[1].Positions[0].Toe, before.Sweeps[1].Positions[0].Toe; !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("the side that was not read moved: toe %.9f, was %.9f", got, want)
	}
}

// TestFitOfInventedReadings: what is fitted to a template's readings is not a car's own.
func TestFitOfInventedReadings(t *testing.T) {
	for own, want := range map[bool]study.Source{false: study.FromTemplate, true: study.FromFit} {
		d, _ := simulated(t, "fit01.json")
		d.Sources = study.Sources{study.AnyNumber: study.FromTemplate}
		if own {
			d.SetSource("readings", study.FromTyping)
		}
		f, err := Fit(context.Background(), d, FitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		applied, err := ApplyFit(d, f)
		if err != nil {
			t.Fatal(err)
		}
		if got := applied.Sources.At("left.tieRodOuter.z"); got != want || applied.Sources.At("left.toe") != study.FromTemplate {
			t.Errorf("own readings: %t; a fitted height is from %q, static toe from %q", own, got, applied.Sources.At("left.toe"))
		}
	}
}

func TestAxle(t *testing.T) {
	d := document(t, "")
	r, err := Axle(context.Background(), d, AxleOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	c := r.Cars[0]
	if !(math.Abs(float64(c.AxleSteer.Left+c.AxleSteer.Right)) <= 1e-9) {
		t.Errorf("a symmetric axle steers by %g and %g", float64(c.AxleSteer.Left), float64(c.AxleSteer.Right))
	}
	// Sideways slip per rolled distance is sin(toe): 0.1 deg gives 1.745328 m/km.
	if !(math.Abs(float64(c.Scrub.Left)-1.745328) <= 1e-6) {
		t.Errorf("scrub %.6f m/km, want 1.745328", float64(c.Scrub.Left))
	}
	if c.Drag.Valid() {
		t.Error("a drag without a cornering stiffness")
	}
	if !c.RollSteer.Valid() || !c.RollCentre.Valid() || !c.Drift.Left.Valid() {
		t.Errorf("%+v", c)
	}
}

func TestTradeOff(t *testing.T) {
	d := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 5}, {"parameter": "tieRodInnerHeight", "min": -10, "max": 10}]},`)
	done := 0.0
	progress := func(p Progress) {
		if !(p.Fraction >= done && p.Fraction <= 1) {
			t.Errorf("progress goes from %g to %g", done, p.Fraction)
		}
		done = p.Fraction
	}
	r, err := TradeOff(context.Background(), d, TradeOffOptions{Designs: new(4), Progress: progress})
	if err != nil {
		t.Fatal(err)
	}
	if done < 0.8 {
		t.Errorf("progress ends at %g, of a front with all its searches", done)
	}
	if len(r.Designs) < 3 || r.Aim != "stock" || r.AimUnit != "mm" {
		t.Fatalf("%d designs, aim %s in %s", len(r.Designs), r.Aim, r.AimUnit)
	}
	for i := 1; i < len(r.Designs); i++ {
		if a, b := r.Designs[i-1], r.Designs[i]; !(b.Aim < a.Aim && b.RMS >= a.RMS) {
			t.Errorf("design %d does not trade against the one before", i)
		}
	}
	usual, err := TradeOff(context.Background(), d, TradeOffOptions{})
	if err != nil || len(usual.Designs) <= len(r.Designs) {
		t.Errorf("the usual trade-off: %v, %+v, want more designs than of 4", err, usual)
	}
	_, err = TradeOff(context.Background(), d, TradeOffOptions{Aim: "beauty"})
	wantError(t, err, Wrong, "aim", "beauty")
}

// TestTradeOffTowardsAckermann: without a figure of its own the second aim is to be as
// near as possible to true Ackermann, 100 %.
func TestTradeOffTowardsAckermann(t *testing.T) {
	d := document(t, `"search": {"variables": [{"parameter": "steeringArmOffset", "min": -10, "max": 10}]},`)
	usual, err := TradeOff(t.Context(), d, TradeOffOptions{Aim: "ackermann", Designs: new(2)})
	if err != nil {
		t.Fatal(err)
	}
	full, err := TradeOff(t.Context(), d, TradeOffOptions{Aim: "ackermann", Ackermann: new(float64(100)), Designs: new(2)})
	if err != nil {
		t.Fatal(err)
	}
	for i, k := range full.Designs {
		near(t, "off from true Ackermann, %", float64(usual.Designs[i].Aim), float64(k.Aim), 0)
	}
	if usual.Aim != "ackermann" || usual.AimUnit != "%" || len(full.Designs) == 0 {
		t.Errorf("aim %s in %s with %d designs", usual.Aim, usual.AimUnit, len(full.Designs))
	}
}

// TestAxleDrift: with one wheel in bump the mean of both toes turns the car, and over a
// short run it leaves its line by half the run's square over the radius of the turn.
func TestAxleDrift(t *testing.T) {
	d := document(t, "")
	r, err := Axle(t.Context(), d, AxleOptions{Candidate: "base", Distance: new(10.0)})
	if err != nil {
		t.Fatal(err)
	}
	s := sweepOf(t, d, SweepOptions{Candidate: "base", Motion: "left"})
	top := len(s.Sweeps[0].Positions) - 1
	left, right := s.Sweeps[0].Positions[top].Toe, s.Sweeps[1].Positions[top].Toe
	steer := (right - left) / 2 * math.Pi / 180 // toe-in of the left wheel steers to the right
	const run = 10_000.0                        // mm
	want := run * run / 2 * steer / d.Vehicle.Wheelbase
	drift := r.Cars[0].Drift
	near(t, "drift to the left with the left wheel in bump, mm", float64(drift.Left), want, 1e-3*math.Abs(want))
	near(t, "with the right wheel, mm", float64(drift.Right), -want, 1e-3*math.Abs(want))
}

// TestApplySearchTakesWhatTheShopHas: of steps that are stated the candidate has those; a
// name that is taken is not taken twice.
func TestApplySearchTakesWhatTheShopHas(t *testing.T) {
	r := &SearchResult{Rounded: &Rounded{Values: study.Changes{"tieRodOuterHeight": -12}}}
	r.Best.Values = study.Changes{"tieRodOuterHeight": -12.07}
	d := &study.Document{Candidates: []study.Candidate{{Name: "found"}}}
	if k := ApplySearch(d, r).Candidates[1]; k.Name != "found 2" || k.Changes["tieRodOuterHeight"] != -12 {
		t.Errorf("candidate %q with %v, want found 2 with -12", k.Name, k.Changes)
	}
	r.Rounded = nil
	if k := ApplySearch(d, r).Candidates[1]; k.Changes["tieRodOuterHeight"] != -12.07 || len(d.Candidates) != 1 {
		t.Errorf("without steps the candidate has %v, want -12.07, and the study stays as it was", k.Changes)
	}
}
