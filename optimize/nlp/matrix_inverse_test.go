package nlp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func TestInverseKnown(t *testing.T) {
	tests := []struct {
		name    string
		n       int
		s, want []float64 // want is nil where there is none
	}{
		{"one", 1, []float64{4}, []float64{0.25}},
		{"two", 2, []float64{2, 1, 1, 1}, []float64{1, -1, -1, 2}},
		{"diagonal", 3, []float64{2, 0, 0, 0, 4, 0, 0, 0, 8}, []float64{0.5, 0, 0, 0, 0.25, 0, 0, 0, 0.125}},
		{"singular", 2, []float64{1, 1, 1, 1}, nil},
		{"indefinite", 2, []float64{1, 2, 2, 1}, nil},
		{"not a number", 1, []float64{math.NaN()}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := mat.NewSymDense(tt.n, tt.s)
			got, ok := Inverse(s)
			if ok != (tt.want != nil) {
				t.Fatalf("there is an inverse: %t, want %t", ok, tt.want != nil)
			}
			if ok && !mat.EqualApprox(got, mat.NewSymDense(tt.n, tt.want), 1e-15) {
				t.Errorf("inverse = %v, want %v", mat.Formatted(got), tt.want)
			}
		})
	}
}

// TestInverseUndoes checks matrices like those of an innovation: the unit matrix and
// what few unknowns share among many readings.
func TestInverseUndoes(t *testing.T) {
	rng := rand.New(rand.NewPCG(51, 52))
	for _, n := range []int{2, 7, 40} {
		s := mat.NewSymDense(n, nil)
		for i := range n {
			s.SetSym(i, i, 1)
		}
		s.SymRankK(s, 1, mat.NewDense(n, 3, normals(rng, 3*n)))
		got, ok := Inverse(s)
		if !ok {
			t.Fatalf("n=%d: no inverse", n)
		}
		var unit mat.Dense
		unit.Mul(s, got)
		for i := range n {
			unit.Set(i, i, unit.At(i, i)-1)
		}
		if off := mat.Norm(&unit, 1); !(off <= 1e-12) {
			t.Errorf("n=%d: the product misses the unit matrix by %g", n, off)
		}
	}
}
