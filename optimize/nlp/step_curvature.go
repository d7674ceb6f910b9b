package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// curvature estimates Σ yᵢ ∇²rᵢ + Σ μₖ ∇²gₖ, the part of the Hessian that
// linearised residuals and limits leave out, from changes of their Jacobians.
// It starts at zero.
type curvature struct {
	s     *mat.SymDense
	error []float64 // scratch
}

func newCurvature(n int) *curvature {
	return &curvature{s: mat.NewSymDense(n, nil), error: make([]float64, n)}
}

// update makes S·step = change hold by the least symmetric correction (Powell's
// symmetric Broyden formula), after S has been shrunk to the size that the
// change shows, so that it dies out where residuals go to zero (Dennis, Gay and
// Welsch 1981; both from memory). A step of no length changes nothing.
func (c *curvature) update(step, change []float64) {
	length := floats.Dot(step, step)
	if length == 0 {
		return
	}
	e := c.error
	SymMulVec(e, c.s, step)
	along, now := math.Abs(floats.Dot(step, change)), math.Abs(floats.Dot(step, e))
	if along < now {
		c.s.ScaleSym(along/now, c.s)
		floats.Scale(along/now, e)
	}
	floats.SubTo(e, change, e)
	floats.AddScaled(e, -floats.Dot(e, step)/(2*length), step)
	AddOuter(c.s, 2/length, e, step)
}

// convex replaces h by its nearest positive semidefinite matrix. Scratch has room
// for all its elements.
func convex(h *mat.SymDense, scratch []float64) {
	if definite(h, scratch) {
		return
	}
	e := symmetricEigen(h)
	h.Zero()
	for k, value := range e.values {
		if value > 0 {
			AddOuter(h, value, e.vector(k), e.vector(k))
		}
	}
}

// definite reports whether h is positive definite or zero, by Gauss's elimination in
// a: all pivots are positive.
func definite(h *mat.SymDense, a []float64) bool {
	n := h.SymmetricDim()
	for i := range n {
		for j := range n {
			a[i*n+j] = h.At(i, j)
		}
	}
	if maxAbs(a) == 0 {
		return true
	}
	for k := range n {
		if !(a[k*n+k] > 0) {
			return false
		}
		for i := k + 1; i < n; i++ {
			floats.AddScaled(a[i*n+k:(i+1)*n], -a[i*n+k]/a[k*n+k], a[k*n+k:(k+1)*n])
		}
	}
	return true
}
