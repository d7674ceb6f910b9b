package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
)

// searchFor is a search of the outer ball's height for a target.
func searchFor(target string) string {
	return `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]` + target + `},`
}

// TestSearchReachesAnotherCarsCurve: the target is the curve of a candidate whose
// one change is the search's variable, so that the search must come back to it.
func TestSearchReachesAnotherCarsCurve(t *testing.T) {
	for _, tt := range []struct {
		name, more string
		o          SearchOptions
		height     float64
	}{
		{"of the study", searchFor(`, "targetOf": "low ball"`), SearchOptions{}, -8},
		{"of the options", searchFor(""), SearchOptions{TargetOf: "low ball"}, -8},
		{"in place of the study's", searchFor(`, "target": [[0, 0], [40, 1]]`), SearchOptions{TargetOf: "base"}, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := searchOf(t, document(t, tt.more), tt.o)
			near(t, "height", r.Best.Values["tieRodOuterHeight"], tt.height, 1e-4)
			near(t, "rms", float64(r.Best.RMS), 0, 1e-6)
			if r.Target == nil || len(r.Target.Left) != 10 {
				t.Errorf("target %+v, want a point for each position", r.Target)
			}
		})
	}
}

// TestCurveThatCanBeHadIsAnEnd: three variables bring the curve to another car's to the
// last bit that arithmetic has; the search knows that there is no more to gain.
func TestCurveThatCanBeHadIsAnEnd(t *testing.T) {
	r := searchOf(t, study.Template{Key: "double-wishbone-rack"}.Document(), SearchOptions{TargetOf: "Spacers 6 mm"})
	near(t, "rms", float64(r.Best.RMS), 0, 1e-9)
	if !r.Converged || r.Agreeing != r.Restarts {
		t.Errorf("converged %t, %d of %d searches agree", r.Converged, r.Agreeing, r.Restarts)
	}
}

// TestTargetSlope: a slope is the line of its two ends.
func TestTargetSlope(t *testing.T) {
	line := searchOf(t, document(t, searchFor(`, "target": [[-40, -0.2], [50, 0.25]]`)), SearchOptions{})
	slope := 0.005
	for _, tt := range []struct {
		name, more string
		o          SearchOptions
	}{
		{"of the study", searchFor(`, "targetSlope": 0.005`), SearchOptions{}},
		{"of the options", searchFor(`, "targetOf": "low ball"`), SearchOptions{TargetSlope: &slope}},
	} {
		r := searchOf(t, document(t, tt.more), tt.o)
		near(t, tt.name, float64(r.Best.RMS), float64(line.Best.RMS), 1e-9)
	}
	if flat := searchOf(t, document(t, searchFor("")), SearchOptions{}); !(math.Abs(float64(flat.Best.RMS-line.Best.RMS)) > 1e-4) {
		t.Error("a slope asks for nothing else than a flat curve")
	}
}

// TestTargetOfIsEveryCallsTarget: what a search is held against, a comparison, a
// map and a series are too.
func TestTargetOfIsEveryCallsTarget(t *testing.T) {
	d := document(t, searchFor(`, "targetOf": "low ball"`)+toleranced)
	c, err := Compare(t.Context(), d, CompareOptions{Candidate: "low ball"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "compare", float64(c.Cars[0].RMS), 0, 1e-12)
	low, high := -0.5, 0.5
	m, err := Map(t.Context(), d, MapOptions{X: "tieRodOuterHeight", Y: "tieRodInnerHeight", YMin: &low, YMax: &high, Columns: new(11), Rows: new(3)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "map: best cell", float64(m.Best.X), -8, 1e-9)
	s, err := Tolerance(t.Context(), d, ToleranceOptions{Candidate: "low ball", Cars: new(50)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tolerance", float64(s.Figure.Nominal), 0, 1e-12)
	if c.Target == nil || len(c.Target.Right) != 10 {
		t.Errorf("target %+v", c.Target)
	}
}

func TestTargetRefuses(t *testing.T) {
	for _, tt := range []struct{ name, target, key, part string }{
		{"no such car", `, "targetOf": "gone"`, "search.targetOf", `no candidate is called "gone"`},
		{"twice", `, "targetOf": "base", "targetSlope": 1`, "search", "more than once"},
		{"points too", `, "targetOf": "base", "target": [[0, 0]]`, "search", "more than once"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Search(t.Context(), document(t, searchFor(tt.target)), SearchOptions{})
			wantError(t, err, Wrong, tt.key, tt.part)
		})
	}
	_, err := Search(t.Context(), document(t, searchFor("")), SearchOptions{TargetOf: "gone"})
	wantError(t, err, Wrong, "search.targetOf", "gone")
}
