package engine

import (
	"math"
	"slices"
	"testing"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// limitsNotHeld are limits that the demo cars cannot hold: by a bound that is out of
// reach, by one that is nearly so, and by two that pull against each other.
var limitsNotHeld = [][]study.Limit{
	{{Result: "tieRodLength", Min: new(1e5)}},
	{{Result: "outerBallAngle", Max: new(0.2)}},
	{{Result: "tieRodLength", Max: new(1.0)}, {Result: "outerBallAngle", Max: new(1.0)}, {Result: "innerBallAngle", Max: new(0.5)}},
}

// TestStoppedSearchIsNotWorse: wherever a search is stopped, and whether or not any
// values hold the limits, its answer is no worse than the car from which it began.
func TestStoppedSearchIsNotWorse(t *testing.T) {
	for name, d := range demoStudies(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			for n, limits := range append(limitsNotHeld, nil, aboutBase(t, d)) {
				sides := []string{"left", "right", "both"}
				if limits != nil {
					sides = sides[n%3:][:1] // limits take long
				}
				for i, side := range sides {
					limited := d.Clone()
					limited.Search.Limits = append(slices.Clone(limited.Search.Limits), limits...)
					s, err := newSearcher(limited, &SearchOptions{Side: side, Minimise: []string{"rms", "peak"}[i%2]})
					if err != nil {
						t.Fatal(err)
					}
					for _, evaluations := range []int{1, 3, 8, 20} {
						notWorse(t, &s.problem, &optimize.Settings{Restarts: 2, Evaluations: evaluations})
					}
				}
			}
		})
	}
}

// aboutBase returns limits that the base car just holds.
func aboutBase(t *testing.T, d *study.Document) []study.Limit {
	t.Helper()
	measured := d.Clone()
	measured.Search.Limits = []study.Limit{{Result: "outerBallAngle", Max: new(1.0)}, {Result: "innerBallAngle", Max: new(1.0)}}
	s, err := newSearcher(measured, &SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	base, err := s.byName(study.BaseName)
	if err != nil {
		t.Fatal(err)
	}
	for k := range s.problem.Limits {
		measured.Search.Limits[k].Max = new(s.problem.Limits[k].State(base.axle, solver.Attitude{}, s.ws).Value*180/math.Pi + 1e-3)
	}
	return measured.Search.Limits
}

// notWorse holds the answer of a search against its start, both looked at anew.
func notWorse(t *testing.T, p *optimize.ToeSearch, settings *optimize.Settings) {
	t.Helper()
	a, err := optimize.SearchToe(t.Context(), p, settings)
	if err != nil {
		t.Fatal(err)
	}
	if a.Values == nil {
		t.Errorf("%s after %d evaluations without any values", a.Result.Status, settings.Evaluations)
		return
	}
	const rounding = 1e-6 // of a limit's scale and of the figure
	best, start := standing(p, a.Values), standing(p, p.Start())
	if best[0] > start[0]+rounding || best[0] > start[0]-rounding && best[1] > start[1]*(1+rounding) {
		t.Errorf("%s after %d evaluations: limits broken by %g, score %g; the car as it stands %g, %g",
			a.Result.Status, settings.Evaluations, best[0], best[1], start[0], start[1])
	}
}

// standing returns by how much a car breaks its limits, and its score.
func standing(p *optimize.ToeSearch, x []float64) [2]float64 {
	o := p.Problem()
	size := o.Model.Size()
	v := nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
	if !o.Model.Evaluate(x, &v) {
		return [2]float64{math.Inf(1), math.Inf(1)}
	}
	return [2]float64{max(0, slices.Max(append(v.G, 0))), o.Objective.Value(v.R)}
}
