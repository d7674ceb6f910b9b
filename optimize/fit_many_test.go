package optimize

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// manyRuns is an invented car read at 9 travels in each of many runs, by turns with one
// of four stacks, or with a stack of their own each.
func manyRuns(t testing.TB, runs int, own bool) *GaugeFit {
	a := inventedCar(t)
	p := &GaugeFit{Base: a}
	for i := range runs {
		height := -float64(i % 4)
		if own {
			height = -4 * float64(i) / float64(runs)
		}
		set := readAt([]solver.Side{solver.Left, solver.Right}[i%2], Indicators, []solver.Change{part(t, a, "tieRodOuterHeight", height)},
			-40, -30, -20, -10, 0, 10, 20, 30, 40)
		set.SlopeSD = 0.0015
		p.Sets = append(p.Sets, set)
	}
	// What a car reads that is off by a millimetre here and there, and a scatter.
	m := newGaugeModel(t.Context(), p, p.unknowns())
	x := make([]float64, m.size.Variables)
	for k := range x {
		if m.unknowns[k].Kind == CarUnknown {
			x[k] = float64(k%3 - 1)
		}
	}
	v := nlp.NewValues(m.size)
	if err := m.predict(x, &v); err != nil {
		t.Fatal(err)
	}
	g := rand.New(rand.NewPCG(1, uint64(runs)))
	for row, r := range v.R {
		set := m.setOf(row)
		s := &p.Sets[set]
		s.Readings[row-m.firsts[set]].Value = (r + g.NormFloat64()) * s.Repeatability
	}
	return p
}

// BenchmarkFitManyRuns fits the readings of a fleet: the time by reading should not grow
// with their number.
func BenchmarkFitManyRuns(b *testing.B) {
	for _, own := range []bool{false, true} {
		for _, runs := range []int{100, 1000} {
			p := manyRuns(b, runs, own)
			b.Run(fmt.Sprintf("runs=%d/ownStack=%t", runs, own), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := FitCar(b.Context(), p); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*p.readings()), "ns/reading")
			})
		}
	}
}

// TestFitManyRuns fits the readings of 300 runs of one invented car: the
// zeros of the runs are no variables, each is the one that suits its run, and an end
// that is asked for meanwhile is an error.
func TestFitManyRuns(t *testing.T) {
	p := manyRuns(t, 300, true)
	m := newGaugeModel(t.Context(), p, p.unknowns())
	if m.size.Variables != len(m.unknowns) {
		t.Errorf("%d variables for %d unknowns: the work grows with readings by zeros", m.size.Variables, len(m.unknowns))
	}
	f, err := FitCar(t.Context(), p)
	if err != nil {
		t.Fatal(err)
	}
	if f.Freedom != 300*9-300 || f.Verdict() != Explained || len(f.Zeros) != 300 {
		t.Errorf("%d degrees of freedom, chi-square %g, %d zeros", f.Freedom, f.ChiSquare, len(f.Zeros))
	}
	for i := range f.Residuals {
		if got := mean(f.Residuals[i]); !near(got, 0, 1e-9) {
			t.Errorf("run %d: residuals have a mean of %g mm", i, got)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := FitCar(ctx, p); err == nil {
		t.Error("a fit that was cancelled is no error")
	}
}
