package nlp

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestTriangleAgainstSingularValues finds the same covariance and leverage both ways, of a
// fit whose parameters are far from independent.
func TestTriangleAgainstSingularValues(t *testing.T) {
	const rows, cols = 30, 6
	a := mat.NewDense(rows, cols, nil)
	for i := range rows {
		for j := range cols {
			a.Set(i, j, math.Pow(float64(i)/rows, float64(j))+1e-3*math.Sin(float64(7*i+3*j)))
		}
	}
	norms := []float64{1, 2, 3, 0.5, 7, 1000}
	e := Estimate{Residuals: make([]float64, rows-cols)}
	if !e.qr(a, norms) {
		t.Fatal("no triangle")
	}
	terms := singularValues(a)
	want, share := covariance(terms, norms), leverage(terms, rows-cols)
	for i := range cols {
		for j := range cols {
			if size := math.Sqrt(want.At(i, i) * want.At(j, j)); !(math.Abs(e.Covariance.At(i, j)-want.At(i, j)) <= 1e-9*size) {
				t.Errorf("covariance %d, %d = %g, want %g", i, j, e.Covariance.At(i, j), want.At(i, j))
			}
		}
	}
	for i := range share {
		if !near(e.Leverage[i], share[i], 1e-9) {
			t.Errorf("leverage %d = %g, want %g", i, e.Leverage[i], share[i])
		}
	}
	a.SetCol(2, mat.Col(nil, 1, a))
	if e.qr(a, norms) {
		t.Error("two columns that are one make no triangle")
	}
}
