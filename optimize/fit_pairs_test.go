package optimize

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"toewright/solver"
)

// TestPair uses covariances that settle a difference, a sum, and neither.
func TestPair(t *testing.T) {
	for _, tt := range []struct {
		shared  float64
		sum, ok bool
		want    float64 // standard deviation
	}{{0.45, false, true, math.Sqrt(0.1)}, {-0.45, true, true, math.Sqrt(0.1)}, {0.5, false, true, 0}, {0.1, false, false, math.Sqrt(0.8)}} {
		f := &FittedCar{Unknowns: []Unknown{{SD: 1}, {SD: 1}}, Covariance: mat.NewSymDense(2, []float64{0.5, tt.shared, tt.shared, 0.5})}
		if p, ok := f.pair(0, 1); p.Sum != tt.sum || ok != tt.ok || !near(p.SD, tt.want, 1e-12) {
			t.Errorf("pair that shares %g = %+v, %t, want sum %t, deviation %g, %t", tt.shared, p, ok, tt.sum, tt.want, tt.ok)
		}
	}
}

// TestPairs reads a car whose two tie rod ball heights alone are unknown: one
// stack settles their difference and leaves both open.
func TestPairs(t *testing.T) {
	a := inventedCar(t)
	p := &GaugeFit{Base: a, Sets: []ReadingSet{readAt(solver.Left, Indicators, nil, -50, -25, 25, 50)},
		Priors: []FitPrior{prior(t, a, "tieRodOuter.z", false), prior(t, a, "tieRodInner.z", false), prior(t, a, "tieRodOuter.x", false)}}
	p.TravelZero = 1
	m := newGaugeModel(t.Context(), p, p.unknowns())
	start, err := m.start()
	if err != nil {
		t.Fatal(err)
	}
	e, err := m.solve(t.Context(), start, nil)
	if err != nil {
		t.Fatal(err)
	}
	f := m.fitted(&e)
	pairs := f.Pairs()
	if len(pairs) != 1 {
		t.Fatalf("pairs are %+v, want the two heights", pairs)
	}
	q := pairs[0]
	if q.A != 0 || q.B != 1 || q.Sum || !near(q.Before, 2.5*math.Sqrt2, 1e-12) {
		t.Errorf("pair is %+v, want the difference of unknowns 0 and 1", q)
	}
	if want := math.Sqrt(f.Covariance.At(0, 0) + f.Covariance.At(1, 1) - 2*f.Covariance.At(0, 1)); !near(q.SD, want, 1e-9) {
		t.Errorf("difference has standard deviation %.9g mm, want %.9g by the covariance", q.SD, want)
	}
	if !(q.SD < 0.5*f.SD(0)) {
		t.Errorf("difference has standard deviation %.3g mm beside %.3g of one height", q.SD, f.SD(0))
	}
}
