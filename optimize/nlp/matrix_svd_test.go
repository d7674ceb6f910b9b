package nlp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func TestSingularsKnown(t *testing.T) {
	tests := []struct {
		name       string
		rows, cols int
		a          []float64
		want       []float64
	}{
		{"one", 1, 1, []float64{-3}, []float64{3}},
		{"zero", 2, 2, make([]float64, 4), []float64{0, 0}},
		{"diagonal", 3, 3, []float64{2, 0, 0, 0, -5, 0, 0, 0, 1}, []float64{5, 2, 1}},
		{"golden ratio", 2, 2, []float64{1, 1, 0, 1}, []float64{(math.Sqrt(5) + 1) / 2, (math.Sqrt(5) - 1) / 2}},
		{"tall, of rank 1", 3, 2, []float64{1, 2, 2, 4, 2, 4}, []float64{3 * math.Sqrt(5), 0}},
		{"wide", 1, 2, []float64{3, 4}, []float64{5, 0}},
		// Both values to all digits, although they are 1e150 apart.
		{"graded", 2, 2, []float64{1, 1e-150, 0, 1e-150}, []float64{1, 1e-150}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for k, s := range singularValues(mat.NewDense(tt.rows, tt.cols, tt.a)) {
				if !near(s.value, tt.want[k], 1e-14*math.Max(tt.want[k], tt.want[0]*1e-2)) {
					t.Errorf("value %d = %g, want %g", k, s.value, tt.want[k])
				}
			}
		})
	}
}

// TestSingularsRebuild checks that the terms make up random matrices again, that their
// vectors are orthogonal, and that the values descend.
func TestSingularsRebuild(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	for _, tt := range []struct{ rows, cols int }{{4, 4}, {30, 7}, {5, 9}, {60, 20}} {
		a := mat.NewDense(tt.rows, tt.cols, normals(rng, tt.rows*tt.cols))
		terms := singularValues(a)
		rest := mat.DenseCopyOf(a)
		for k, s := range terms {
			rest.RankOne(rest, -1, mat.NewVecDense(tt.rows, s.left), mat.NewVecDense(tt.cols, s.right))
			for l, other := range terms[:k] {
				if got := dot(s.right, other.right); !near(got, 0, 1e-13) {
					t.Errorf("%v: right vectors %d and %d have product %g", tt, k, l, got)
				}
				if got := dot(s.left, other.left); !near(got, 0, 1e-12*math.Max(s.value, 1)) {
					t.Errorf("%v: left vectors %d and %d have product %g", tt, k, l, got)
				}
			}
			if !near(dot(s.right, s.right), 1, 1e-13) {
				t.Errorf("%v: right vector %d has length %g", tt, k, math.Sqrt(dot(s.right, s.right)))
			}
			if k > 0 && !(s.value <= terms[k-1].value) {
				t.Errorf("%v: value %d = %g follows %g", tt, k, s.value, terms[k-1].value)
			}
		}
		if top := mat.Norm(rest, 1); !(top <= 1e-12*mat.Norm(a, 1)) {
			t.Errorf("%v: the terms miss the matrix by %g", tt, top)
		}
	}
}
