package optimize_test

import (
	"context"
	"math"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// TestRobustFollowsWeights: the percentile is of all cars, of each set-up as many as its
// weight says, whatever the weights: cars built anew in each set-up bear it out.
func TestRobustFollowsWeights(t *testing.T) {
	for _, weights := range [][2]float64{{1, 1}, {1, 9}, {9, 1}, {0.5, 0.01}} {
		p := optimize.RobustSearch{ToeSearch: *limitedSearch(t), Tolerances: textbookSeries(t).Tolerances}
		p.Measure = optimize.Peak
		p.Scenarios = []optimize.Scenario{{Name: "level", Hold: solver.HoldAll, Weight: weights[0]}, {Name: "low", Hold: solver.HoldAll, Weight: weights[1]}}
		p.Scenarios[1].From.Heave = 15
		a, err := optimize.SearchRobust(context.Background(), &p, &optimize.Settings{Restarts: 4})
		if err != nil {
			t.Fatal(err)
		}
		below := 0.0
		for i, s := range p.Scenarios {
			series := textbookSeries(t)
			series.Measure, series.Seed, series.From, series.Changes = optimize.Peak, 77, s.From, nil
			series.Travels, series.Targets = p.Travels, p.Targets
			for k := range p.Free {
				series.Changes = append(series.Changes, solver.Change{Parameter: p.Free[k].Parameter, Sides: p.Free[k].Sides, Value: a.Values[k]})
			}
			series.Limit = a.Percentile.Value
			_, built := countCars(t, series, cars(6000))
			share, _, _ := built.Yield()
			below += weights[i] / (weights[0] + weights[1]) * share
		}
		// The share of 6000 cars is known to some 0.4 %, the percentile itself to 0.2 %.
		if !(math.Abs(below-0.95) <= 0.015) {
			t.Errorf("weights %v: %.4f of the cars built stay within the percentile of 0.95", weights, below)
		}
	}
}
