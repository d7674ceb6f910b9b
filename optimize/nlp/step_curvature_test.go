package nlp

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestCurvatureSecant checks that the update holds along the step.
func TestCurvatureSecant(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	c := newCurvature(4)
	for range 50 {
		step, change := normals(rng, 4), normals(rng, 4)
		c.update(step, change)
		var got mat.VecDense
		got.MulVec(c.s, mat.NewVecDense(4, step))
		if !nearAll(got.RawVector().Data, change, 1e-8*(1+mat.Norm(c.s, 2))) {
			t.Fatalf("S·step = %v, want %v", got.RawVector().Data, change)
		}
	}
}

// TestCurvatureQuadratic checks that n steps in n directions find a constant
// Hessian, indefinite here.
func TestCurvatureQuadratic(t *testing.T) {
	hessian := mat.NewSymDense(3, []float64{2, -1, 0, -1, -3, 0.5, 0, 0.5, 1})
	c := newCurvature(3)
	for _, step := range [][]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
		var change mat.VecDense
		change.MulVec(hessian, mat.NewVecDense(3, step))
		c.update(step, change.RawVector().Data)
	}
	if !mat.EqualApprox(c.s, hessian, 1e-12) {
		t.Errorf("S = %v, want %v", mat.Formatted(c.s), mat.Formatted(hessian))
	}
}

// TestCurvatureDies checks that S goes where the changes go to nothing, and that
// a step of no length changes nothing.
func TestCurvatureDies(t *testing.T) {
	c := newCurvature(2)
	c.update([]float64{1, 1}, []float64{3, 5})
	c.update([]float64{0, 0}, []float64{0, 0})
	if mat.Norm(c.s, 2) == 0 {
		t.Error("S = 0 after an empty step, want it kept")
	}
	c.update([]float64{1, 1}, []float64{0, 0})
	if norm := mat.Norm(c.s, 2); norm != 0 {
		t.Errorf("S has norm %g after a step without change, want 0", norm)
	}
}

func TestConvex(t *testing.T) {
	tests := []struct {
		name    string
		h, want []float64
	}{
		{"positive", []float64{2, 1, 1, 2}, []float64{2, 1, 1, 2}},
		{"zero", []float64{0, 0, 0, 0}, []float64{0, 0, 0, 0}},
		{"negative", []float64{-2, 0, 0, -1}, []float64{0, 0, 0, 0}},
		// Eigenvalues 3 along (1, 1) and -1 along (1, -1).
		{"indefinite", []float64{1, 2, 2, 1}, []float64{1.5, 1.5, 1.5, 1.5}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := mat.NewSymDense(2, tt.h)
			convex(h, make([]float64, 4))
			if want := mat.NewSymDense(2, tt.want); !mat.EqualApprox(h, want, 1e-14) {
				t.Errorf("convex() = %v, want %v", mat.Formatted(h), mat.Formatted(want))
			}
		})
	}
}
