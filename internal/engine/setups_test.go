package engine

import (
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

// casters is a search that must serve three casters, the last twice as much.
const casters = `"search": {
	"variables": [{"parameter": "tieRodOuterHeight", "min": -30, "max": 20}],
	"limits": [{"result": "tieRodLength", "max": 900}],
	"scenarios": [
		{"name": "caster 4", "changes": {"caster": 4}}, {"name": "caster 5", "changes": {"caster": 5}},
		{"name": "caster 6, an inch low", "changes": {"caster": 6, "rideHeight": -25}, "weight": 2}]},`

// TestSearchScenarioCurves: each set-up comes with its weight, its curve and the
// figure that the curve has, and the worst of them is said to bind.
func TestSearchScenarioCurves(t *testing.T) {
	r := searchOf(t, document(t, casters), SearchOptions{})
	if len(r.Scenarios) != 3 || r.Scenarios[2].Weight != 2 {
		t.Fatalf("scenarios %+v", r.Scenarios)
	}
	sum, binding, worst := 0.0, 0, 0.0
	for _, c := range r.Scenarios {
		curve := c.Curves[0]
		square := 0.0
		for i, x := range curve.Change {
			square += x * x / float64(len(curve.Change))
			near(t, "change", x, curve.Toe[i]-curve.Toe[4], 1e-12)
		}
		near(t, c.Name+" rms", float64(c.RMS), math.Sqrt(square), 1e-12)
		near(t, c.Name+" score", float64(c.Score), float64(c.RMS), 1e-12)
		sum += c.Weight * square / 4
		worst = math.Max(worst, float64(c.Score))
		if c.Binds {
			binding++
			near(t, "binding score", float64(c.Score), worst, 0)
		}
	}
	near(t, "weighted mean of the squares", float64(r.Optima[0].Value), math.Sqrt(sum), 1e-9)
	if binding != 1 {
		t.Errorf("%d set-ups bind", binding)
	}
}

// TestCompareServes: a candidate with the best values of the search has its
// figures, in every set-up.
func TestCompareServes(t *testing.T) {
	d := document(t, casters)
	found := searchOf(t, d, SearchOptions{})
	d.Candidates = d.Candidates[:1]
	d.Candidates[0].Changes = found.Best.Values
	c, err := Compare(t.Context(), d, CompareOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Served) != 2 || c.Served[0].Candidate != "base" {
		t.Fatalf("%d cars served", len(c.Served))
	}
	got := c.Served[1]
	near(t, "score", float64(got.Score), float64(found.Optima[0].Value), 1e-9)
	if !(c.Served[0].Score > got.Score) {
		t.Errorf("the base car has %g, the best %g", float64(c.Served[0].Score), float64(got.Score))
	}
	for i, s := range got.Scenarios {
		near(t, s.Name, float64(s.RMS), float64(found.Scenarios[i].RMS), 1e-9)
		if s.Binds != found.Scenarios[i].Binds {
			t.Errorf("%s binds: %v, the search says %v", s.Name, s.Binds, found.Scenarios[i].Binds)
		}
	}
	if len(got.Limits) != 3 || got.Limits[2].Scenario != "caster 6, an inch low" || !got.Limits[2].Held {
		t.Errorf("limits %+v, want one for each set-up", got.Limits)
	}
}

// TestCompareServesWhatCannotBe: a set-up that a car cannot take, and a limit that
// cannot be measured, are said to be so; the rest of the comparison stands.
func TestCompareServesWhatCannotBe(t *testing.T) {
	d := document(t, `"search": {
		"variables": [{"parameter": "tieRodOuterHeight", "min": -30, "max": 20}],
		"limits": [{"result": "threadEngagement", "min": 10}],
		"scenarios": [{"name": "as it is"}, {"name": "on its nose", "changes": {"rideHeight": -400}}]},`)
	c, err := Compare(t.Context(), d, CompareOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	s := c.Served[0]
	if s.Score.Valid() || s.Scenarios[0].Problem != "" || !s.Scenarios[0].RMS.Valid() {
		t.Errorf("score %v, first set-up %+v", s.Score, s.Scenarios[0])
	}
	if p := s.Scenarios[1].Problem; p == "" || s.Scenarios[1].RMS.Valid() {
		t.Errorf("second set-up: %q", p)
	}
	if len(s.Limits) != 2 || s.Limits[0].Held || !strings.Contains(s.Limits[0].Problem, "tieRod.engagement") {
		t.Errorf("limits %+v, want one that names what is missing", s.Limits)
	}
}

// TestCompareWithoutSearch has nothing to serve.
func TestCompareWithoutSearch(t *testing.T) {
	c, err := Compare(t.Context(), document(t, ""), CompareOptions{})
	if err != nil || c.Served != nil || c.Target != nil {
		t.Errorf("served %v, target %v, %v", c.Served, c.Target, err)
	}
}

// TestMapOfAllSetUps: a cell over all set-ups is what the cells of each by itself come
// to, weighted as the search weights them or the worst of them.
func TestMapOfAllSetUps(t *testing.T) {
	mapOf := func(d *study.Document, figure, scenario string) float64 {
		m, err := Map(t.Context(), d, MapOptions{X: "tieRodOuterHeight", Y: "tieRodInnerHeight", Columns: new(2), Rows: new(2), Figure: figure, Scenario: scenario})
		if err != nil {
			t.Fatal(err)
		}
		return float64(m.Cells[0][1])
	}
	for _, tt := range []struct{ figure, combine string }{{"rms", ""}, {"peak", ""}, {"rms", "worst"}, {"peak", "worst"}} {
		t.Run(tt.figure+" "+tt.combine, func(t *testing.T) {
			d := document(t, casters)
			d.Search.Combine = tt.combine
			d.Search.Minimise = map[string]string{"rms": "peak", "peak": "rms"}[tt.figure] // the figure asked for comes first
			a, b, c := mapOf(d, tt.figure, "caster 4"), mapOf(d, tt.figure, "caster 5"), mapOf(d, tt.figure, "caster 6, an inch low")
			want := (a + b + 2*c) / 4
			switch {
			case tt.combine == "worst":
				want = max(a, b, c)
			case tt.figure == "rms":
				want = math.Sqrt((a*a + b*b + 2*c*c) / 4)
			}
			near(t, "all set-ups", mapOf(d, tt.figure, AllScenarios), want, 1e-12)
		})
	}
}

// TestMapInASetUpThatHoldsLess: a cell of the map in a set-up that re-solves toe alone
// is the candidate with the same changes that holds toe alone.
func TestMapInASetUpThatHoldsLess(t *testing.T) {
	d := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -30, "max": 20}],
		"scenarios": [{"name": "lowered", "changes": {"rideHeight": -25}, "hold": ["toe"]}]},`)
	d.Candidates = []study.Candidate{{Name: "lowered", Changes: study.Changes{"rideHeight": -25}, Hold: []string{"toe"}}, {Name: "all held", Changes: study.Changes{"rideHeight": -25}}}
	zero := 0.0
	m, err := Map(t.Context(), d, MapOptions{X: "tieRodOuterHeight", Y: "tieRodInnerHeight", XMin: &zero, YMin: &zero, Columns: new(2), Rows: new(2), Scenario: "lowered"})
	if err != nil {
		t.Fatal(err)
	}
	c, err := Compare(t.Context(), d, CompareOptions{})
	if err != nil {
		t.Fatal(err)
	}
	rms := map[string]float64{} // of either side: the car is symmetric
	for _, car := range c.Cars {
		rms[car.Candidate] = float64(car.RMS)
	}
	lowered, held := rms["lowered"], rms["all held"]
	near(t, "rms of the cell without other parts, deg", float64(m.Cells[0][0]), lowered, 1e-9)
	if !(math.Abs(lowered-held) > 1e-4) {
		t.Errorf("rms %g deg with toe held, %g with all: the test shows nothing", lowered, held)
	}
}
