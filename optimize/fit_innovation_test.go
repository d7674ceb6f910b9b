package optimize

import (
	"context"
	"math"
	"runtime"
	"sync/atomic"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// filedCar is a car of an invented fleet, known as well as its priors say.
func filedCar(t *testing.T, p *GaugeFit) *FittedCar {
	t.Helper()
	f, err := p.filed(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestInnovationWeighsBySpread compares with the spread itself, inverted as it stands, out
// of which each zero is taken that nobody knows.
func TestInnovationWeighsBySpread(t *testing.T) {
	p := manyRuns(t, 4, true)
	p.Sets[1].Zero = new(0.1)
	p.Sets[2].Readings = p.Sets[2].Readings[:5]
	f := filedCar(t, p)
	v, err := f.innovation(t.Context(), p.Sets)
	if err != nil {
		t.Fatal(err)
	}
	n := len(v.off)
	var spread, weight mat.Dense
	spread.Product(v.rates, f.Covariance, v.rates.T())
	zeros := mat.NewDense(n, 3, nil)
	for column, set := range []int{0, 2, 3} {
		first, end := v.model.span(set)
		for i := first; i < end; i++ {
			zeros.Set(i, column, 1)
		}
	}
	for i := range n {
		spread.Set(i, i, spread.At(i, i)+1)
	}
	var inner, took mat.Dense
	if err := weight.Inverse(&spread); err != nil {
		t.Fatal(err)
	}
	inner.Product(zeros.T(), &weight, zeros)
	if err := inner.Inverse(&inner); err != nil {
		t.Fatal(err)
	}
	took.Product(&weight, zeros, &inner, zeros.T(), &weight)
	weight.Sub(&weight, &took)

	off := mat.NewVecDense(n, v.off)
	if got, want := v.chiSquare(v.off), mat.Inner(off, &weight, off); !near(got, want, 1e-9*want) {
		t.Errorf("chi-square %g, want %g", got, want)
	}
	var settled mat.VecDense
	settled.MulVec(&weight, off)
	settled.MulVec(&spread, &settled)
	var left mat.Dense
	left.Product(&spread, &weight, &spread)
	got, sd := v.settle()
	for i := range n {
		if !near(got[i], settled.AtVec(i), 1e-9) || !near(sd[i], math.Sqrt(left.At(i, i)), 1e-9) {
			t.Errorf("reading %d: off %g by %g, want %g by %g", i, got[i], sd[i], settled.AtVec(i), math.Sqrt(left.At(i, i)))
		}
	}
}

// TestLongRunIsWeighedInLine: what a run of readings takes grows with their number, not
// with its square: 3,000 squared would be 72 MB, and one such was made for each of several.
func TestLongRunIsWeighedInLine(t *testing.T) {
	p := manyRuns(t, 2, false)
	f := filedCar(t, p)
	long := p.Sets[:1]
	long[0].Readings = nil
	for i := range 3000 {
		long[0].Readings = append(long[0].Readings, Reading{Travel: float64(i%81) - 40})
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	if _, err := f.innovation(t.Context(), long); err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	if took := (after.TotalAlloc - before.TotalAlloc) >> 20; took > 24 {
		t.Errorf("3000 readings of one run take %d MB, want 24 at most", took)
	}
}

// TestFitStopsBetweenStacks: an end that is asked for while the cars of one step are made
// ends the fit there, with the context's error.
func TestFitStopsBetweenStacks(t *testing.T) {
	p := manyRuns(t, 60, true)
	for left := range int64(90) {
		ctx := &ending{Context: t.Context()}
		ctx.left.Store(left)
		f, err := FitCar(ctx, p)
		if err != context.Canceled || f != nil && f.Residuals == nil {
			t.Fatalf("ended when it was asked %d times: %v", left, err)
		}
		if more := -ctx.left.Load(); more > 8 {
			t.Errorf("ended when it was asked %d times, it goes on for %d more", left, more)
		}
	}
}

// ending is a context that ends when it was asked so often.
type ending struct {
	context.Context
	left atomic.Int64
}

func (e *ending) Err() error {
	if e.left.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}
