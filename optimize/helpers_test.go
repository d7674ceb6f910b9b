package optimize

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// near reports whether got is within tol of want; false for NaN.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// checkJacobian compares the residuals' derivatives with gonum's central differences at
// x, in variables of the scales.
func checkJacobian(t *testing.T, m nlp.Model, x, scales []float64) {
	t.Helper()
	const step, tol = 1e-6, 1e-6 // truncation 1e-12, rounding 1e-10 of the residuals
	size := m.Size()
	at := nlp.NewValues(size)
	if !m.Evaluate(x, &at) {
		t.Fatalf("Evaluate(%v) = false, want true", x)
	}
	moved, beside := make([]float64, len(x)), nlp.NewValues(size)
	of := func(r, u []float64) {
		for j := range moved {
			moved[j] = x[j] + u[j]*scales[j]
		}
		m.Evaluate(moved, &beside)
		copy(r, beside.R)
	}
	want := mat.NewDense(size.Residuals, size.Variables, nil)
	fd.Jacobian(want, of, make([]float64, len(x)), &fd.JacobianSettings{Formula: fd.Central, Step: step})
	for i := range size.Residuals {
		for j := range size.Variables {
			got, w := at.JR.At(i, j), want.At(i, j)/scales[j]
			if !near(got, w, tol*(1+math.Abs(w))) {
				t.Errorf("derivative %d,%d = %.10g, want %.10g by differences", i, j, got, w)
			}
		}
	}
}
