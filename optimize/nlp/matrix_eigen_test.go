package nlp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func TestEigenKnown(t *testing.T) {
	root := math.Sqrt2 / 2
	tests := []struct {
		name    string
		s       []float64
		values  []float64
		vectors [][]float64 // up to their sign; nil where any will do
	}{
		{"one", []float64{-3}, []float64{-3}, [][]float64{{1}}},
		{"zero", make([]float64, 4), []float64{0, 0}, nil},
		{"diagonal", []float64{5, 0, 0, 0, -1, 0, 0, 0, 2}, []float64{-1, 2, 5}, [][]float64{{0, 1, 0}, {0, 0, 1}, {1, 0, 0}}},
		{"indefinite", []float64{1, 2, 2, 1}, []float64{-1, 3}, [][]float64{{root, -root}, {root, root}}},
		{"zero diagonal", []float64{0, 1, 1, 0}, []float64{-1, 1}, [][]float64{{root, -root}, {root, root}}},
		{"double value", []float64{2, 1, 1, 1, 2, 1, 1, 1, 2}, []float64{1, 1, 4}, nil},
		// The small value of a graded matrix, 1e-20·(1 - 1/4), to all digits.
		{"graded", []float64{1, 0.5e-10, 0.5e-10, 1e-20}, []float64{0.75e-20, 1 + 0.25e-20}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			e := symmetricEigen(mat.NewSymDense(len(tt.values), tt.s))
			for k, want := range tt.values {
				if !near(e.values[k], want, 1e-14*math.Abs(want)) {
					t.Errorf("value %d = %g, want %g", k, e.values[k], want)
				}
			}
			for k, want := range tt.vectors {
				if along := math.Abs(dot(e.vector(k), want)); !near(along, 1, 1e-14) {
					t.Errorf("vector %d = %v, want %v", k, e.vector(k), want)
				}
			}
		})
	}
}

// TestEigenRebuilds checks that values and vectors make up random matrices again,
// that the vectors are orthogonal, and that values ascend.
func TestEigenRebuilds(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	for _, n := range []int{2, 3, 7, 24} {
		s := mat.NewSymDense(n, normals(rng, n*n))
		e := symmetricEigen(s)
		rest := copyOf(s)
		for k, value := range e.values {
			v := e.vector(k)
			rest.SymRankOne(rest, -value, mat.NewVecDense(n, v))
			for l := range k + 1 {
				want := 0.0
				if l == k {
					want = 1
				}
				if got := dot(v, e.vector(l)); !near(got, want, 1e-13) {
					t.Errorf("n=%d: vectors %d and %d have product %g, want %g", n, k, l, got, want)
				}
			}
			if k > 0 && !(value >= e.values[k-1]) {
				t.Errorf("n=%d: value %d = %g follows %g", n, k, value, e.values[k-1])
			}
		}
		if top := mat.Norm(rest, 1); !(top <= 1e-13*float64(n)*mat.Norm(s, 1)) {
			t.Errorf("n=%d: the parts miss the matrix by %g", n, top)
		}
	}
}
