package solver

import (
	"math"
	"testing"
)

// TestFillRates: a position at a lock has no derivative, by whatever parameter, and the
// ones before and after keep theirs; the memory of an earlier sweep does not show.
func TestFillRates(t *testing.T) {
	var c Curve
	c.reserve(3, 4)
	for i := range 3 {
		c.fillRates(i, float64(i+1))
	}
	c.fillRates(1, math.NaN())
	for i, want := range []float64{1, math.NaN(), 3} {
		for name, got := range map[string]float64{
			"first parameter": c.ToeRate(i, 0), "second parameter": c.ToeRate(i, 1), "travel": c.ToeTravelRate(i), "steering": c.ToeSteerRate(i),
		} {
			if got != want && !(math.IsNaN(got) && math.IsNaN(want)) {
				t.Errorf("position %d: derivative by the %s = %g, want %g", i, name, got, want)
			}
		}
	}
}
