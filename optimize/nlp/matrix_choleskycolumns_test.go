package nlp

import (
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestCholeskyColumns checks that the vectors make up the covariance, and that there are
// as many as it has rank.
func TestCholeskyColumns(t *testing.T) {
	tests := []struct {
		name string
		s    []float64
		want int
	}{
		{"independent", []float64{4, 0, 0, 9}, 2},
		{"correlated", []float64{4, 5, 5, 9}, 2},
		{"of one number", []float64{1, 2, -3, 2, 4, -6, -3, -6, 9}, 1},
		{"a known one", []float64{1, 0, 0, 0, 0, 0, 0, 0, 2}, 2},
		{"all known", make([]float64, 4), 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			n := 2
			if len(tt.s) == 9 {
				n = 3
			}
			s, sum := mat.NewSymDense(n, tt.s), mat.NewSymDense(n, nil)
			got := CholeskyColumns(s)
			if len(got) != tt.want {
				t.Errorf("%d columns, want %d", len(got), tt.want)
			}
			for _, d := range got {
				sum.SymRankOne(sum, 1, mat.NewVecDense(n, d))
			}
			if !mat.EqualApprox(sum, s, 1e-14) {
				t.Errorf("they make up %v, want %v", mat.Formatted(sum), mat.Formatted(s))
			}
		})
	}
}
