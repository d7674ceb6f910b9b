package engine

import (
	"context"
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

const toleranced = `"tolerances": [{"parameter": "tieRodOuter.z", "plusMinus": 1}, {"parameter": "tieRodInner.z", "sd": 0.5, "varies": "car"},
  {"parameter": "caster", "plusMinus": 0.3, "distribution": "triangular"}], "yield": {"limit": 0.75, "cars": 2000, "seed": 4},`

func TestTolerance(t *testing.T) {
	d := document(t, toleranced)
	r, err := Tolerance(context.Background(), d, ToleranceOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if r.Cars != 2000 || r.Failed != 0 || len(r.Positions) != 20 || r.StaticToe != "re-set" {
		t.Errorf("cars %d, failed %d, %d positions, static toe %q", r.Cars, r.Failed, len(r.Positions), r.StaticToe)
	}
	for _, p := range r.Positions {
		if spread := (float64(p.High) - float64(p.Low)) / (2 * 1.96); p.Travel != 0 && !(math.Abs(spread/float64(p.SD)-1) <= 0.15) {
			t.Errorf("travel %g: simulated sd %.4f, linear %.4f", p.Travel, spread, float64(p.SD))
		}
	}
	if y := r.Yield; y == nil || !(y.Low < y.Share && y.Share < y.High) {
		t.Fatalf("yield %+v", r.Yield)
	}
	again, err := Tolerance(context.Background(), d, ToleranceOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if again.Yield.Share != r.Yield.Share || again.Figure != r.Figure {
		t.Error("the same seed gave other cars")
	}
	other := 5
	moved, err := Tolerance(context.Background(), d, ToleranceOptions{Seed: &other})
	if err != nil {
		t.Fatal(err)
	}
	if moved.Figure == r.Figure {
		t.Error("another seed gave the same cars")
	}
}

func TestToleranceRefuses(t *testing.T) {
	_, err := Tolerance(context.Background(), document(t, ""), ToleranceOptions{})
	wantError(t, err, Wrong, "tolerances", "")
	_, err = Tolerance(context.Background(), document(t, toleranced), ToleranceOptions{Cars: new(-1)})
	wantError(t, err, Wrong, "cars", "-1")
	_, err = Tolerance(context.Background(), document(t, toleranced), ToleranceOptions{Limit: new(-0.2)})
	wantError(t, err, Wrong, "limit", "-0.2 deg is not a limit")
	kept := document(t, `"tolerances": [{"parameter": "toe", "sd": 0.1}], "yield": {"limit": 0.1, "keepToe": true},`)
	_, err = Tolerance(context.Background(), kept, ToleranceOptions{})
	wantError(t, err, Wrong, "", "tolerance of toe: the cars' toe is not re-set")
	_, err = Tolerance(context.Background(), document(t, toleranced), ToleranceOptions{Toe: "free"})
	wantError(t, err, Wrong, "toe", "neither re-set nor as-built")
}

func TestMapAgreesWithSearch(t *testing.T) {
	d := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 0}, {"parameter": "tieRodInnerHeight", "min": -10, "max": 10}]},`)
	m, err := Map(context.Background(), d, MapOptions{Columns: new(21), Rows: new(5)})
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Cells) != 5 || len(m.Cells[0]) != 21 || m.X.Values[20] != 0 || m.Y.Values[2] != 0 {
		t.Fatalf("map of %d by %d cells over %v, %v", len(m.Cells), len(m.Cells[0]), m.X.Values, m.Y.Values)
	}
	c, err := Compare(context.Background(), d, CompareOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := m.Cells[2][20], c.Cars[0].RMS; !(math.Abs(float64(got-want)) <= 1e-12) {
		t.Errorf("the cell of the base car says %.9f, compare %.9f", float64(got), float64(want))
	}
	s, err := Search(context.Background(), d, SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if !(m.Best.Figure >= s.Best.RMS) {
		t.Errorf("a cell has %.6f, less than the optimum %.6f", float64(m.Best.Figure), float64(s.Best.RMS))
	}
	_, err = Map(context.Background(), document(t, ""), MapOptions{})
	wantError(t, err, Wrong, "x", "names no parameter")
}

func TestChoose(t *testing.T) {
	d := document(t, `"catalogue": [
    {"slot": "spacers", "name": "6 mm", "price": 10, "changes": {"tieRodOuterHeight": -6}},
    {"slot": "spacers", "name": "9 mm", "price": 12, "changes": {"tieRodOuterHeight": -9}},
    {"slot": "pins", "name": "tall", "price": 80, "changes": {"upperBallJointHeight": 10, "tieRodOuterHeight": -1}, "excludes": ["9 mm"]}],`)
	r, err := Choose(context.Background(), d, ChooseOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if r.Tried != 6 || r.Built != 5 || len(r.Best) != 5 {
		t.Fatalf("tried %d, built %d, %d listed", r.Tried, r.Built, len(r.Best))
	}
	for _, k := range r.Best {
		if len(k.Parts) == 2 && k.Changes["tieRodOuterHeight"] != -7 {
			t.Errorf("%v: changes %v do not add up", k.Parts, k.Changes)
		}
	}
	for i := 1; i < len(r.Undominated); i++ {
		a, b := r.Undominated[i-1], r.Undominated[i]
		if !(a.Price <= b.Price && a.RMS > b.RMS) {
			t.Errorf("undominated %v at %g, then %v at %g", a.Parts, a.Price, b.Parts, b.Price)
		}
	}
	_, err = Choose(context.Background(), document(t, ""), ChooseOptions{})
	wantError(t, err, Wrong, "catalogue", "is empty")
}

func TestSteer(t *testing.T) {
	d := document(t, "")
	r, err := Steer(context.Background(), d, SteerOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	ps := r.Cars[0].Points
	if len(ps) != 2*steerSteps+1 || ps[0].Input != -60 {
		t.Fatalf("%d points from %g", len(ps), ps[0].Input)
	}
	for i, p := range ps {
		q := ps[len(ps)-1-i]
		if !(math.Abs(float64(p.Left+q.Right)) <= 1e-9) {
			t.Errorf("input %g: left %.9f, mirrored right %.9f", p.Input, float64(p.Left), float64(q.Right))
		}
	}
	rear := document(t, "")
	rear.Steering = nil
	_, err = Steer(context.Background(), rear, SteerOptions{})
	wantError(t, err, Wrong, "steering", "without a gear")
}

func TestDiagnoseRemediesWork(t *testing.T) {
	d := document(t, "")
	r, err := Diagnose(context.Background(), d, DiagnoseOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	left := r.Cars[0]
	if sum := left.SlopeShare + left.CurvatureShare + left.RestShare; !(math.Abs(float64(sum)-1) <= 1e-9) {
		t.Errorf("shares add up to %g", float64(sum))
	}
	if len(left.Remedies) == 0 || len(left.Words) == 0 {
		t.Fatal("nothing is said")
	}
	for _, m := range left.Remedies {
		d.Candidates = d.Candidates[:1]
		d.Candidates[0].Changes = m.Changes
		c, err := Compare(context.Background(), d, CompareOptions{Candidate: d.Candidates[0].Name})
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Cars[0].RMS; !(math.Abs(float64(got-m.RMS)) <= 1e-6) {
			t.Errorf("%v leaves %.6f, diagnosed %.6f", m.Changes, float64(got), float64(m.RMS))
		}
	}
}

func TestSearchKeepsToLimits(t *testing.T) {
	const search = `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -40, "max": 40, "grid": 0.5}, {"parameter": "tieRodInnerHeight", "min": -40, "max": 40, "grid": 0.5}], "limits": [LIMIT]},`
	for _, tt := range []struct {
		name, limit string
		held        bool
	}{
		{"outer ball angle", `{"result": "outerBallAngle", "max": 12}`, true},
		{"clearance", `{"result": "clearance", "of": "outer-ball", "radius": 15, "min": 5, "rim": {"radius": 180, "offset": 30}}`, true},
		{"link", `{"result": "clearance", "of": "tie-rod", "radius": 8, "min": 5, "link": {"from": "lowerFrontPivot", "to": "lowerBallJoint", "radius": 12}}`, true},
		{"ratio", `{"result": "steeringRatio", "min": 10, "max": 30}`, true},
		{"turning circle", `{"result": "turningCircle", "max": 1000}`, false},
		{"ackermann", `{"result": "ackermann", "min": -50, "max": 200, "side": "left"}`, true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := document(t, replaceLimit(search, tt.limit))
			r, err := Search(context.Background(), d, SearchOptions{})
			if err != nil {
				t.Fatal(err)
			}
			if len(r.Limits) != 1 || r.Limits[0].Held != tt.held || !r.Limits[0].Value.Valid() {
				t.Errorf("limits %+v, want held %v", r.Limits, tt.held)
			}
			if r.Rounded == nil {
				t.Fatal("no values on the grid")
			}
			for key, v := range r.Rounded.Values {
				if k := v / 0.5; math.Abs(k-math.Round(k)) > 1e-9 {
					t.Errorf("%s = %g is off the grid", key, v)
				}
			}
		})
	}
	_, err := Search(context.Background(), document(t, replaceLimit(search, `{"result": "threadEngagement", "min": 10}`)), SearchOptions{})
	wantError(t, err, Wrong, "tieRod.engagement", "is missing")
	_, err = Search(context.Background(), document(t, replaceLimit(search, `{"result": "clearance", "of": "tie-rod", "min": 5, "link": {"from": "lowerBallJoint", "to": "nowhere"}}`)), SearchOptions{})
	wantError(t, err, Wrong, "search.limits", "nowhere")
}

func TestSearchForMostCars(t *testing.T) {
	d := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -30, "max": 10}], "minimise": "peak", "percentile": 95},`+toleranced)
	r, err := Search(context.Background(), d, SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if r.Robust == nil || !(r.Robust.Figure <= r.Robust.Nominal && r.Robust.Nominal < r.Robust.Start) {
		t.Errorf("robust %+v", r.Robust)
	}
	bare := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -30, "max": 10}], "percentile": 95},`)
	_, err = Search(context.Background(), bare, SearchOptions{})
	wantError(t, err, Wrong, "search.percentile", "no tolerances")
}

// TestToleranceAsBuilt: with its rods as drawn a car's toe is off at travel 0 too,
// by the rod's own error over the arm, and fewer cars pass.
func TestToleranceAsBuilt(t *testing.T) {
	const rod = `"tolerances": [{"parameter": "tieRodLength", "plusMinus": 0.5}], "yield": {"limit": 0.75, "cars": 2000, "keepToe": true},`
	d := document(t, rod)
	built, err := Tolerance(context.Background(), d, ToleranceOptions{})
	if err != nil {
		t.Fatal(err)
	}
	reset, err := Tolerance(context.Background(), d, ToleranceOptions{Toe: "re-set"})
	if err != nil {
		t.Fatal(err)
	}
	if built.StaticToe != "as built" || reset.StaticToe != "re-set" {
		t.Errorf("static toe %q and %q, want as built and re-set", built.StaticToe, reset.StaticToe)
	}
	// Uniform within 0.5 mm, on an arm of some 125 mm.
	at0, want := built.Positions[4], 0.5/math.Sqrt(3)/125*180/math.Pi
	if at0.Travel != 0 || !(math.Abs(float64(at0.SD)/want-1) <= 0.1) {
		t.Errorf("at travel %g sd %.4f deg, want near %.4f", at0.Travel, float64(at0.SD), want)
	}
	if reset.Positions[4].SD != 0 || !(built.Yield.Share < reset.Yield.Share) {
		t.Errorf("re-set: sd %g at travel 0, yield %.3f; as built %.3f", float64(reset.Positions[4].SD), float64(reset.Yield.Share), float64(built.Yield.Share))
	}
}

// TestSteerToTheLock turns a symmetric car further than it goes: it locks alike to both
// hands, between the last input reached and the next.
func TestSteerToTheLock(t *testing.T) {
	r, err := Steer(t.Context(), document(t, ""), SteerOptions{Candidate: "base", Lock: new(400.0), Step: new(10.0)})
	if err != nil {
		t.Fatal(err)
	}
	lock, ps := r.Cars[0].Lock, r.Cars[0].Points
	if lock == nil || lock.Link == "" {
		t.Fatalf("lock %+v, want one with its link", lock)
	}
	near(t, "lock to the left against the right, mm", float64(lock.High), -float64(lock.Low), 1e-6)
	if last := ps[len(ps)-1].Input; !(last <= float64(lock.High) && float64(lock.High) < last+10) {
		t.Errorf("the last input reached is %g mm, the lock at %g: want it less than a step of 10 beyond", last, float64(lock.High))
	}
}

func TestSteerRefuses(t *testing.T) {
	_, err := Steer(t.Context(), document(t, ""), SteerOptions{Lock: new(float64(-5))})
	wantError(t, err, Wrong, "lock", "-5 is not a steering input")
	_, err = Steer(t.Context(), document(t, ""), SteerOptions{Candidate: "nobody"})
	wantError(t, err, Wrong, "candidate", "nobody")
}

// TestChooseNamesThePart whose changes the car does not have.
func TestChooseNamesThePart(t *testing.T) {
	d := document(t, `"catalogue": [{"slot": "arms", "name": "long arm", "price": 1, "changes": {"steeringArmLength": 5}}],`)
	d.Catalogue[0].Changes = study.Changes{"steeringArmLenght": 5}
	if _, err := Choose(t.Context(), d, ChooseOptions{}); err == nil || !strings.Contains(err.Error(), "part long arm: steeringArmLenght: is not a parameter") {
		t.Errorf("Choose = %v, want an error that names the part and the key", err)
	}
}
