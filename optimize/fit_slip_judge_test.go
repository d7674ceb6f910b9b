package optimize

import (
	"testing"

	"toewright/solver"
)

// TestJudgeCountsTheStretch: values that a slip put right makes larger scatter more,
// which is taken off its chi-square.
func TestJudgeCountsTheStretch(t *testing.T) {
	a := inventedCar(t)
	p := &GaugeFit{Base: a, Sets: []ReadingSet{readAt(solver.Left, Indicators, nil, -40, -20, 0, 20, 40)},
		Priors: []FitPrior{prior(t, a, "tieRodOuter.z", false)}}
	h := hypothesis{slip: Slip{Kind: SignSlip, End: 5}, sets: p.Sets}
	plain, ok := p.judge(t.Context(), &h)
	h.stretch = 3
	stretched, okToo := p.judge(t.Context(), &h)
	if !ok || !okToo || !near(stretched, plain-6, 1e-9) {
		t.Errorf("chi-square %g, with a stretch of 3 %g, want 6 less", plain, stretched)
	}
}
