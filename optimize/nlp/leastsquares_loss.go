package nlp

import "math"

// Loss says how the square of a residual, in standard deviations, counts. Rho
// is about z for small z, up to a constant factor, and must not decrease.
type Loss interface {
	// Rho returns the loss for the squared residual z >= 0, and its derivative
	// with respect to z: the weight of the residual in the normal equations.
	Rho(z float64) (rho, weight float64)
}

// Squares is the loss of least squares: rho(z) = z.
type Squares struct{}

// Rho implements [Loss].
func (Squares) Rho(z float64) (rho, weight float64) { return z, 1 }

// huberK makes Huber's estimate 95 % as efficient as least squares where all
// errors are normal (Huber, Robust Statistics, 1981; from memory).
const huberK = 1.345

// Huber counts residuals up to K standard deviations as squares and larger ones
// in proportion to their size.
type Huber struct {
	K float64 // > 0; 0 means 1.345
}

// Rho implements [Loss].
func (h Huber) Rho(z float64) (rho, weight float64) {
	k := h.K
	if k == 0 {
		k = huberK
	}
	if z <= k*k {
		return z, 1
	}
	size := math.Sqrt(z)
	return 2*k*size - k*k, k / size
}

// studentFreedom suits readings of which a few are gross errors.
const studentFreedom = 4

// StudentT is the loss of errors that follow Student's distribution: large
// residuals count less and less.
type StudentT struct {
	Freedom float64 // degrees of freedom, > 0; 0 means 4
}

// Rho implements [Loss].
func (s StudentT) Rho(z float64) (rho, weight float64) {
	f := s.Freedom
	if f == 0 {
		f = studentFreedom
	}
	return (f + 1) * math.Log1p(z/f), (f + 1) / (f + z)
}
