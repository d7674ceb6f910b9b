package optimize_test

import (
	"math"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// TestOutlookAgreesWithCars holds what the linear model foresees against cars that
// are built, toe re-set and as built.
func TestOutlookAgreesWithCars(t *testing.T) {
	for _, tt := range []struct {
		name   string
		series *optimize.Series
		limit  float64 // deg
	}{
		{"re-set", textbookSeries(t), 0.2},
		{"as built", builtSeries(t), 0.6},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := tt.series
			s.Measure, s.Limit = optimize.Peak, solver.Deg(tt.limit)
			p, c := countCars(t, s, cars(4000))
			o := s.Outlook(p)
			share, _, _ := c.Yield()
			// Of 4000 cars a share near 0.9 is known to some 0.005, a 95th
			// percentile to some 2 % of the spread.
			if !(math.Abs(o.Yield-share) <= 0.02) {
				t.Errorf("yield %.3f, cars built %.3f", o.Yield, share)
			}
			if got, want := float64(o.Percentile95), c.Figure.Quantile(0.95); !(math.Abs(got-want) <= 0.04*want) {
				t.Errorf("95th percentile %.5g rad, cars built %.5g", got, want)
			}
			if !(o.Nominal < o.Percentile95) {
				t.Errorf("nominal %.5g rad beyond the 95th percentile", float64(o.Nominal))
			}
		})
	}
}
