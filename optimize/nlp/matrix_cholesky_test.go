package nlp

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestCholeskyKnown(t *testing.T) {
	tests := []struct {
		name string
		a    []float64
		want []float64 // upper triangle, by rows; nil where the matrix has none
	}{
		{"one", []float64{9}, []float64{3}},
		{"two", []float64{4, 2, 2, 5}, []float64{2, 1, 2}},
		{"three", []float64{25, 15, -5, 15, 18, 0, -5, 0, 11}, []float64{5, 3, -1, 3, 1, 3}},
		{"zero", []float64{0}, nil},
		{"singular", []float64{1, 1, 1, 1}, nil},
		{"indefinite", []float64{1, 2, 2, 1}, nil},
		{"not a number", []float64{1, math.NaN(), math.NaN(), 1}, nil},
		{"infinite", []float64{math.Inf(1)}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			n := int(math.Sqrt(float64(len(tt.a))))
			if got := Cholesky(tt.a, n); got != (tt.want != nil) {
				t.Fatalf("positive definite: %t, want %t", got, tt.want != nil)
			}
			for i := range n {
				for j := i; j < n && tt.want != nil; j++ {
					if got := tt.a[i*n+j]; !near(got, tt.want[0], 1e-15) {
						t.Errorf("U[%d,%d] = %g, want %g", i, j, got, tt.want[0])
					}
					tt.want = tt.want[1:]
				}
				if len(tt.want) == 0 {
					break
				}
			}
		})
	}
}

// TestCholeskySolves multiplies the solutions of random systems back.
func TestCholeskySolves(t *testing.T) {
	rng := rand.New(rand.NewPCG(71, 72))
	for _, n := range []int{1, 2, 5, 12} {
		rows := normals(rng, n*n)
		a := make([]float64, n*n)
		for i := range n {
			a[i*n+i] = 1
			for j := range n {
				a[i*n+j] += dot(rows[i*n:(i+1)*n], rows[j*n:(j+1)*n])
			}
		}
		want := normals(rng, n)
		u, x := append([]float64(nil), a...), append([]float64(nil), want...)
		if !Cholesky(u, n) {
			t.Fatalf("n=%d: not positive definite", n)
		}
		CholeskySolve(u, n, x)
		for i := range n {
			if got := dot(a[i*n:(i+1)*n], x); !near(got, want[i], 1e-11) {
				t.Errorf("n=%d: row %d gives %g, want %g", n, i, got, want[i])
			}
		}
	}
}
