package nlp

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestBestCombinationKnown(t *testing.T) {
	tests := []struct {
		name    string
		columns [][]float64
		b       []float64
		want    []float64
	}{
		{"one equation", [][]float64{{4}}, []float64{2}, []float64{0.5}},
		{"mean", [][]float64{{1, 1, 1}}, []float64{1, 2, 6}, []float64{3}},
		{"line through three points", [][]float64{{1, 1, 1}, {0, 1, 2}}, []float64{1, 2, 4}, []float64{5. / 6, 1.5}},
		{"zero column", [][]float64{{0, 0}, {1, 0}}, []float64{3, 4}, []float64{0, 3}},
		// Läuchli's matrix: the normal equations would round 1 + 1e-18 to 1 and
		// be singular.
		{"nearly parallel", [][]float64{{1, 1e-9, 0}, {1, 0, 1e-9}}, []float64{2, 1e-9, 1e-9}, []float64{1, 1}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for j, got := range linearLeastSquares(tt.columns, tt.b) {
				if !near(got, tt.want[j], 1e-6) {
					t.Errorf("d[%d] = %g, want %g", j, got, tt.want[j])
				}
			}
		})
	}
}

// TestBestCombinationLeavesNothingAlong checks on random problems that what is left of b is
// orthogonal to every column.
func TestBestCombinationLeavesNothingAlong(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 42))
	for _, tt := range []struct{ rows, columns int }{{3, 3}, {40, 12}} {
		columns, kept := make([][]float64, tt.columns), make([][]float64, tt.columns)
		for j := range columns {
			columns[j] = normals(rng, tt.rows)
			kept[j] = append([]float64(nil), columns[j]...)
		}
		b := normals(rng, tt.rows)
		rest := append([]float64(nil), b...)
		for j, d := range linearLeastSquares(columns, b) {
			for i := range rest {
				rest[i] -= d * kept[j][i]
			}
		}
		for j, c := range kept {
			if along := math.Abs(dot(rest, c)); !(along <= 1e-12*float64(tt.rows)) {
				t.Errorf("%v: what is left has product %g with column %d", tt, along, j)
			}
		}
	}
}
