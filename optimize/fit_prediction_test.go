package optimize_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// TestPredictSpread compares the standard deviations of a predicted curve with
// those of whole cars drawn from the fit.
func TestPredictSpread(t *testing.T) {
	c := newTruth(t, 23, 2.5)
	f := fitCar(t, &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{c.read(t, noise, nil, grid...)}})
	parts := []solver.Change{changeOf(t, c.base, "tieRodOuterHeight", 4)}
	j := &optimize.Judge{Travels: grid, Sides: solver.LeftOnly}
	p, err := f.Predict(j, parts)
	if err != nil {
		t.Fatal(err)
	}
	const cars = 500
	squares := make([]float64, len(grid))
	var rms []float64
	for range cars {
		moved := *f
		moved.Values = drawn(f, c)
		q, err := moved.Predict(j, parts)
		if err != nil {
			t.Fatal(err)
		}
		for i := range squares {
			d := float64(q.Change[i] - p.Change[i])
			squares[i] += d * d
		}
		rms = append(rms, float64(q.RMS.Fitted))
	}
	// Three times the 3.2 % to which 500 cars know a standard deviation, and the 5 % by which
	// the curvature of the linkage spreads them wider than its slopes do: over 26 seeds the
	// mean ratio is 0.955.
	const tol = 0.15
	for i, sum := range squares {
		want := math.Sqrt(sum / cars)
		if got := float64(p.SD[i]); !(math.Abs(got-want) <= tol*want) {
			t.Errorf("travel %g: standard deviation %.3g rad, want %.3g", grid[i], got, want)
		}
	}
	q := nlp.Quantiles(rms, 0.05, 0.5, 0.95)
	for i, got := range []solver.Angle{p.RMS.Low, p.RMS.Median, p.RMS.High} {
		if width := q[2] - q[0]; !(math.Abs(float64(got)-q[i]) <= tol*width) {
			t.Errorf("RMS quantile %d = %.4g rad, want %.4g", i, got, q[i])
		}
	}
}

// drawn returns values of the unknowns drawn from a fit.
func drawn(f *optimize.FittedCar, c *truth) []float64 {
	var root mat.Cholesky
	if !root.Factorize(f.Covariance) {
		panic("the covariance is not positive definite")
	}
	normal := mat.NewVecDense(len(f.Values), nil)
	for k := range f.Values {
		normal.SetVec(k, c.r.NormFloat64())
	}
	var lower mat.TriDense
	root.LTo(&lower)
	out := mat.NewVecDense(len(f.Values), nil)
	out.MulVec(&lower, normal)
	out.AddVec(out, mat.NewVecDense(len(f.Values), f.Values))
	return out.RawVector().Data
}

func TestPredictSame(t *testing.T) {
	c := newTruth(t, 29, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	j := &optimize.Judge{Travels: grid, Sides: solver.BothSides}
	one, err := f.Predict(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	two, err := f.Predict(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	if one.RMS != two.RMS || one.Peak != two.Peak {
		t.Errorf("bands differ: %v and %v, %v and %v", one.RMS, two.RMS, one.Peak, two.Peak)
	}
	if n := 2 * len(grid); len(one.Change) != n || len(one.SD) != n {
		t.Errorf("%d changes and %d deviations, want %d of each", len(one.Change), len(one.SD), n)
	}
	if sd := one.SD[5]; sd != 0 {
		t.Errorf("toe change at static height has standard deviation %g, want 0", sd)
	}
}
