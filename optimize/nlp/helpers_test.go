package nlp

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// near reports whether got is within tol of want; false for NaN.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// nearAll reports whether two slices agree within tol, element by element.
func nearAll(got, want []float64, tol float64) bool {
	if len(got) != len(want) {
		return false
	}
	for i := range got {
		if !near(got[i], want[i], tol) {
			return false
		}
	}
	return true
}

// functionModel is a model written as a function of x that returns residuals
// and limits, with exact derivatives from the second function.
type functionModel struct {
	size     Size
	evaluate func(x []float64, v *Values) bool
}

func (m functionModel) Size() Size                           { return m.size }
func (m functionModel) Evaluate(x []float64, v *Values) bool { return m.evaluate(x, v) }

// setRow writes a row of a Jacobian where it is wanted.
func setRow(j *mat.Dense, row int, values ...float64) {
	if j != nil {
		j.SetRow(row, values)
	}
}

// checkJacobians compares both Jacobians of a model with central differences at
// x; the steps are 1e-6 of each scale.
func checkJacobians(t *testing.T, m Model, x, scales []float64) {
	t.Helper()
	const step, tol = 1e-6, 1e-6 // truncation 1e-12, rounding 1e-10 of the residuals
	size := m.Size()
	at, up, down := NewValues(size), NewValues(size), NewValues(size)
	if !m.Evaluate(x, &at) {
		t.Fatalf("Evaluate(%v) = false, want true", x)
	}
	moved := append([]float64(nil), x...)
	for j := range x {
		h := step * scales[j]
		moved[j] = x[j] + h
		m.Evaluate(moved, &up)
		moved[j] = x[j] - h
		m.Evaluate(moved, &down)
		moved[j] = x[j]
		checkColumn(t, at.JR, j, up.R, down.R, 2*h, tol)
		if size.Limits > 0 {
			checkColumn(t, at.JG, j, up.G, down.G, 2*h, tol)
		}
	}
}

func checkColumn(t *testing.T, jac *mat.Dense, column int, up, down []float64, width, tol float64) {
	t.Helper()
	for i := range up {
		want := (up[i] - down[i]) / width
		if got := jac.At(i, column); !near(got, want, tol*(1+math.Abs(want))) {
			t.Errorf("derivative %d,%d = %.10g, want %.10g by differences", i, column, got, want)
		}
	}
}
