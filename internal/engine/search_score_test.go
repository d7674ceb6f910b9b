package engine

import (
	"math"
	"strings"
	"testing"
)

// TestScoreIsWhatWasMinimised recomputes the weighted figure of the answer from the
// set-ups' own curves: it stands beside the plain one, and nothing else was minimised.
func TestScoreIsWhatWasMinimised(t *testing.T) {
	const weighted = `"search": {"minimise": "MEASURE", "window": {"bump": 40, "droop": 40, "step": 10},
		"variables": [{"parameter": "tieRodOuterHeight", "min": -25, "max": 25}, {"parameter": "PARAMETER", "min": -8, "max": 8}],
		"weights": [[-40, 0.2], [0, 1], [40, 3]],
		"scenarios": [{"name": "one", "weight": 1}, {"name": "two", "weight": 4, "changes": {"caster": 8}}]},`
	for _, measure := range []string{"rms", "peak"} {
		for _, parameter := range []string{"tieRodInnerHeight", "tieRodInnerHeight@left"} {
			t.Run(measure+" "+parameter, func(t *testing.T) {
				d := document(t, strings.NewReplacer("MEASURE", measure, "PARAMETER", parameter).Replace(weighted))
				r := searchOf(t, d, SearchOptions{})
				total, sum := 0.0, 0.0
				for _, s := range r.Scenarios {
					worst := 0.0
					for _, c := range s.Curves {
						worst = math.Max(worst, weightedFigure(measure, &c, func(x float64) float64 { return interpolate(d.Search.Weights, x) }))
					}
					if measure == "rms" {
						worst *= worst
					}
					sum, total = sum+s.Weight*worst, total+s.Weight
				}
				want := sum / total
				if measure == "rms" {
					want = math.Sqrt(want)
				}
				near(t, "score of the best", float64(r.Best.Score), want, 1e-9)
				near(t, "value of the first optimum", float64(r.Optima[0].Value), want, 1e-9)
				if !r.Weighted() || !(r.Start.Score > r.Best.Score) {
					t.Errorf("weighted %v, start %g, best %g", r.Weighted(), r.Start.Score, r.Best.Score)
				}
			})
		}
	}
	plain := searchOf(t, document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -25, "max": 25}]},`), SearchOptions{})
	if plain.Weighted() {
		t.Errorf("a search without weights is called weighted: %+v", plain.Best)
	}
}

// weightedFigure returns that of a curve's changes against a flat target, degrees.
func weightedFigure(measure string, c *ToeCurve, weight func(float64) float64) float64 {
	sum, total, peak := 0.0, 0.0, 0.0
	for i, x := range c.Change {
		w := weight(c.Travel[i])
		sum, total, peak = sum+w*x*x, total+w, math.Max(peak, w*math.Abs(x))
	}
	if measure == "peak" {
		return peak
	}
	return math.Sqrt(sum / total)
}

// TestTargetBesideTheCar: what no car can meet of a target is said.
func TestTargetBesideTheCar(t *testing.T) {
	for _, tt := range []struct{ target, want string }{
		{`[[-500, 0.1], [-400, 0.3]]`, "outside the window"},
		{`[[400, 0.1], [500, 0.3]]`, "outside the window"},
		{`[[-40, 0.1], [40, 0.1]]`, "0.1 deg at travel 0"},
		{`[[-40, 0.1], [0, 0], [40, -0.1]]`, ""},
		{`[[-400, 0.4], [0, 0], [400, -0.4]]`, ""},
	} {
		d := document(t, `"search": {"target": `+tt.target+`, "variables": [{"parameter": "tieRodOuterHeight", "min": -25, "max": 25}]},`)
		r := searchOf(t, d, SearchOptions{})
		if tt.want == "" && r.TargetNote != "" || !strings.Contains(r.TargetNote, tt.want) {
			t.Errorf("%s: note %q, want %q", tt.target, r.TargetNote, tt.want)
		}
	}
}
