package nlp

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestProductsAgreeWithMat checks the products against those of package mat.
func TestProductsAgreeWithMat(t *testing.T) {
	rng := rand.New(rand.NewPCG(61, 62))
	for _, tt := range []struct{ rows, columns int }{{1, 1}, {3, 3}, {7, 2}, {2, 9}} {
		m := mat.NewDense(tt.rows, tt.columns, normals(rng, tt.rows*tt.columns))
		s := mat.NewSymDense(tt.columns, normals(rng, tt.columns*tt.columns))
		x := mat.NewVecDense(tt.columns, normals(rng, tt.columns))
		raw := x.RawVector().Data
		sameVector := func(name string, got []float64, want mat.Vector) {
			t.Helper()
			if !mat.EqualApprox(mat.NewVecDense(len(got), got), want, 1e-13) {
				t.Errorf("%v: %s = %v, want %v", tt, name, got, mat.Formatted(want))
			}
		}
		var want mat.VecDense
		want.MulVec(m, x)
		sameVector("times", MulVec(make([]float64, tt.rows), m, raw), &want)
		var symmetric mat.VecDense
		symmetric.MulVec(s, x)
		sameVector("symTimes", SymMulVec(make([]float64, tt.columns), s, raw), &symmetric)
		sameVector("column", Column(m, tt.columns-1), m.ColView(tt.columns-1))
		if got, want := Inner(s, raw), mat.Inner(x, s, x); !near(got, want, 1e-12) {
			t.Errorf("%v: inner = %g, want %g", tt, got, want)
		}
		var half, full mat.Dense
		half.Mul(m, s)
		full.Mul(&half, m.T())
		if got := Congruence(m, s); !mat.EqualApprox(got, &full, 1e-12) {
			t.Errorf("%v: congruence = %v, want %v", tt, mat.Formatted(got), mat.Formatted(&full))
		}
	}
}

func TestAddOuter(t *testing.T) {
	s := mat.NewSymDense(3, []float64{1, 2, 3, 0, 4, 5, 0, 0, 6})
	x, y := []float64{1, -2, 0.5}, []float64{3, 0, 8}
	want := mat.DenseCopyOf(s)
	for i := range x {
		for j := range x {
			want.Set(i, j, want.At(i, j)+4*(x[i]*y[j]+y[i]*x[j])/2)
		}
	}
	AddOuter(s, 4, x, y)
	if !mat.EqualApprox(s, want, 1e-15) {
		t.Errorf("the sum is\n%v, want\n%v", mat.Formatted(s), mat.Formatted(want))
	}
}
