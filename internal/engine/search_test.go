package engine

import (
	"context"
	"errors"
	"testing"

	"toewright/internal/study"
)

// oneVariable is a search for the outer ball's height.
const oneVariable = `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]},`

func searchOf(t *testing.T, d *study.Document, o SearchOptions) *SearchResult {
	t.Helper()
	got, err := Search(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// TestSearchAgainstScan compares one variable with a scan of its range.
func TestSearchAgainstScan(t *testing.T) {
	for _, minimise := range []string{"rms", "peak"} {
		d := document(t, oneVariable)
		got := searchOf(t, d, SearchOptions{Minimise: minimise})
		best := figure(got.Best.ToeFigures, minimise)
		for height := -20.0; height <= 20; height += 0.25 {
			d.Candidates = []study.Candidate{{Name: "try", Changes: study.Changes{"tieRodOuterHeight": height}}}
			c := compareOf(t, d, CompareOptions{Candidate: "try"}).Cars[0]
			if tried := figure(ToeFigures{c.RMS, c.Peak}, minimise); tried < best-1e-9 {
				t.Errorf("%s at %g mm is %.9f, less than the best, %.9f", minimise, height, float64(tried), float64(best))
			}
		}
	}
}

func figure(f ToeFigures, name string) Number {
	if name == "peak" {
		return f.Peak
	}
	return f.RMS
}

// TestSearchAnswerIsACandidate checks that the values, taken as the changes of a
// candidate, have the figures that were reported.
func TestSearchAnswerIsACandidate(t *testing.T) {
	d := document(t, oneVariable)
	got := searchOf(t, d, SearchOptions{})
	d.Candidates = []study.Candidate{{Name: "best", Changes: got.Best.Values}}
	c := compareOf(t, d, CompareOptions{Candidate: "best"}).Cars
	near(t, "rms", float64(got.Best.RMS), float64(c[0].RMS), 1e-12)
	near(t, "peak", float64(got.Best.Peak), float64(c[0].Peak), 1e-12)
	near(t, "right rms", float64(got.Best.Right.RMS), float64(c[1].RMS), 1e-12)
	base := compareOf(t, d, CompareOptions{Candidate: "base"}).Cars[0]
	near(t, "start rms", float64(got.Start.RMS), float64(base.RMS), 1e-12)
	if !got.Converged || len(got.AtBound) != 0 || got.Agreeing < 1 || got.Restarts < got.Agreeing {
		t.Errorf("search: %+v, want a converged answer inside the bounds", got)
	}
}

func TestSearchSaysWhatLiesOnABound(t *testing.T) {
	d := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": 0.1, "max": 3}]},`)
	got := searchOf(t, d, SearchOptions{})
	if len(got.AtBound) != 1 || got.Best.Values["tieRodOuterHeight"] != got.AtBound[0].Value {
		t.Errorf("at bound %+v, values %v; want the one variable", got.AtBound, got.Best.Values)
	}
}

func TestSearchSeedRepeats(t *testing.T) {
	seed := 5
	a := searchOf(t, document(t, oneVariable), SearchOptions{Seed: &seed})
	b := searchOf(t, document(t, oneVariable), SearchOptions{Seed: &seed})
	if a.Best.Values["tieRodOuterHeight"] != b.Best.Values["tieRodOuterHeight"] || a.Evaluations != b.Evaluations {
		t.Errorf("the same seed gave %v after %d and %v after %d evaluations", a.Best.Values, a.Evaluations, b.Best.Values, b.Evaluations)
	}
}

func TestSearchSide(t *testing.T) {
	tests := []struct {
		name, more string
		option     string
		want       string
	}{
		{"by default", oneVariable, "", "both"},
		{"said aloud", oneVariable, "both", "both"},
		{"one wheel", oneVariable, "right", "right"},
		{"with a variable of the right side", `"search": {"variables": [{"parameter": "tieRodOuterHeight@right", "min": -20, "max": 20}]},`, "", "both"},
		{"with a target of the right side", `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}], "targetRight": [[0, 0]]},`, "", "both"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := searchOf(t, document(t, tt.more), SearchOptions{Side: tt.option}).Side; got != tt.want {
				t.Errorf("side %q, want %q", got, tt.want)
			}
		})
	}
}

func TestSearchScenarios(t *testing.T) {
	d := document(t, `"search": {
	  "variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}],
	  "scenarios": [
	    {"name": "as it is"},
	    {"name": "lower", "changes": {"rideHeight": -20}, "weight": 3},
	    {"name": "left out", "changes": {"rideHeight": 60}, "weight": 0}
	  ]},`)
	got := searchOf(t, d, SearchOptions{})
	if len(got.Scenarios) != 2 || got.Scenarios[0].Name != "as it is" || got.Scenarios[1].Name != "lower" {
		t.Fatalf("scenarios %+v, want those that count", got.Scenarios)
	}
	alone := searchOf(t, document(t, oneVariable), SearchOptions{})
	if !(got.Scenarios[0].RMS > alone.Best.RMS) {
		t.Errorf("rms as it is = %g, want more than when it is served alone, %g", float64(got.Scenarios[0].RMS), float64(alone.Best.RMS))
	}
}

func TestSearchErrors(t *testing.T) {
	tests := []struct {
		name, more string
		o          SearchOptions
		fault      Fault
		key, part  string
	}{
		{"no search", "", SearchOptions{}, Wrong, "search", "variables"},
		{"a rod's length where toe is re-set", `"search": {"variables": [{"parameter": "tieRodLength", "min": -2, "max": 2}]},`, SearchOptions{}, Wrong, "search.variables", "tieRodLength does nothing"},
		{"unknown figure", oneVariable, SearchOptions{Minimise: "mean"}, Wrong, "minimise", "rms"},
		{"unknown side", oneVariable, SearchOptions{Side: "front"}, Wrong, "side", "left"},
		{"out of reach", `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}], "window": {"bump": 500, "droop": 5, "step": 5}},`,
			SearchOptions{}, Unsolvable, "search", "500 mm of bump"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Search(t.Context(), document(t, tt.more), tt.o)
			wantError(t, err, tt.fault, tt.key, tt.part)
		})
	}
}

// TestSearchCancelled cancels a search at its first report of progress.
func TestSearchCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	got, err := Search(ctx, document(t, oneVariable), SearchOptions{Progress: func(p Progress) {
		if p.Best.Valid() {
			cancel()
		}
	}})
	if err != nil {
		t.Fatal(err)
	}
	if got.Converged || got.Status != "cancelled" || !(got.Best.RMS <= got.Start.RMS) {
		t.Errorf("cancelled search: converged %v, status %q, rms %g from %g", got.Converged, got.Status, float64(got.Best.RMS), float64(got.Start.RMS))
	}
	before, stop := context.WithCancel(t.Context())
	stop()
	if _, err := Search(before, document(t, oneVariable), SearchOptions{}); !errors.Is(err, context.Canceled) {
		t.Errorf("search cancelled before it began: %v, want the context's error", err)
	}
}
