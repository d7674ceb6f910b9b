package optimize

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestPercentileBeyondReach: a design that cannot be built, or lies out of bounds, is
// worse than any that can.
func TestPercentileBeyondReach(t *testing.T) {
	a := inventedCar(t)
	height, _, err := solver.FindParameter(a.Design(), "lowerBallJointHeight")
	if err != nil {
		t.Fatal(err)
	}
	p := &RobustSearch{
		ToeSearch: ToeSearch{
			Base: a, Travels: []float64{-20, 0, 20}, Judge: solver.LeftOnly, Scenarios: []Scenario{{Hold: solver.HoldAll}},
			Free: []Free{{Parameter: height, Min: -5, Max: 900}},
		},
		Tolerances: []Tolerance{{Parameter: height, Distribution: Distribution{Spread: 0.5}}},
	}
	r, err := newRobustModel(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	for x, finite := range map[float64]bool{0: true, 4: true, 900: false, -6: false, 901: false} {
		if got := r.percentile([]float64{x}); math.IsInf(got, 1) == finite || !(got > 0) {
			t.Errorf("percentile at %g mm = %g rad; finite wanted: %t", x, got, finite)
		}
	}
}
