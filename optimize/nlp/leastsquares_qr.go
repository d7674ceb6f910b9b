package nlp

import (
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// qr sets covariance and leverage from the QR decomposition of a by the modified Gram-Schmidt
// method: they are R⁻¹R⁻ᵀ, each column scaled back by its norm, and the squared norms of the
// rows of Q. It takes a fraction of the time of singular values. It returns false where a
// column is no more than the rounding of those before it.
func (e *Estimate) qr(a *mat.Dense, norms []float64) bool {
	m, n := a.Dims()
	q := make([][]float64, n)
	r := make([]float64, n*n)
	for j := range q {
		q[j] = Column(a, j)
	}
	for k := range q {
		size := floats.Norm(q[k], 2)
		if !(size > float64(m)*epsilon) {
			return false
		}
		r[k*n+k] = size
		floats.Scale(1/size, q[k])
		for j := k + 1; j < n; j++ {
			r[k*n+j] = projectOut(q[j], q[k], 1)
		}
	}
	invertUpper(r, n)
	e.Covariance = mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			sum := dot(r[i*n+j:(i+1)*n], r[j*n+j:(j+1)*n])
			e.Covariance.SetSym(i, j, sum/(norms[i]*norms[j]))
		}
	}
	e.Leverage = make([]float64, len(e.Residuals))
	for _, column := range q {
		for i := range e.Leverage {
			e.Leverage[i] += column[i] * column[i]
		}
	}
	return true
}
