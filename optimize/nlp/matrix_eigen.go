package nlp

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// jacobiSweeps bounds the sweeps of Jacobi's method. It converges quadratically:
// six to ten sweeps take any symmetric matrix of our sizes to rounding.
const jacobiSweeps = 40

// eigen is the eigenvalue decomposition of a symmetric matrix, the sum over k of
// values[k]·v·vᵀ, where the eigenvectors v = vector(k) are orthonormal.
type eigen struct {
	values  []float64 // ascending
	vectors []float64 // n×n, one vector in each row
}

// vector returns the eigenvector of value k.
func (e *eigen) vector(k int) []float64 {
	n := len(e.values)
	return e.vectors[k*n : (k+1)*n]
}

// symmetricEigen returns the eigenvalues and eigenvectors of a symmetric matrix of finite
// numbers by Jacobi's rotations
// (Golub and Van Loan, Matrix Computations, 8.5; from memory): small eigenvalues
// of a definite matrix come out as exactly as large ones.
func symmetricEigen(s *mat.SymDense) *eigen {
	n := s.SymmetricDim()
	a, e := make([]float64, n*n), &eigen{make([]float64, n), make([]float64, n*n)}
	for i := range n {
		e.vectors[i*n+i] = 1
		for j := range n {
			a[i*n+j] = s.At(i, j)
		}
	}
	for range jacobiSweeps {
		if !jacobiSweep(a, e.vectors, n) {
			break
		}
	}
	e.sort(a)
	return e
}

// jacobiSweep makes one sweep of rotations over the elements above the diagonal of a, each
// of which makes one zero, and rotates the rows of v along. It returns false where none was
// more than rounding beside its diagonal elements.
func jacobiSweep(a, v []float64, n int) bool {
	rotated := false
	for p := range n {
		for q := p + 1; q < n; q++ {
			off := a[p*n+q]
			if math.Abs(off) <= epsilon*math.Sqrt(math.Abs(a[p*n+p]))*math.Sqrt(math.Abs(a[q*n+q])) {
				continue
			}
			rotated = true
			t := jacobiTangent(off, (a[q*n+q]-a[p*n+p])/2)
			c := 1 / math.Sqrt(1+t*t)
			rotateRows(a[p*n:(p+1)*n], a[q*n:(q+1)*n], c, t*c)
			rotateColumns(a, p, q, n, c, t*c)
			rotateRows(v[p*n:(p+1)*n], v[q*n:(q+1)*n], c, t*c)
		}
	}
	return rotated
}

// jacobiTangent returns the tangent of the smaller angle of the rotation that makes an
// element off the diagonal zero; half is half the difference of the diagonal elements.
func jacobiTangent(off, half float64) float64 {
	return off / (half + math.Copysign(math.Hypot(half, off), half))
}

// rotateRows rotates the rows p and q by the angle of cosine c and sine s.
func rotateRows(p, q []float64, c, s float64) {
	for k, x := range p {
		y := q[k]
		p[k], q[k] = c*x-s*y, s*x+c*y
	}
}

// rotateColumns does to two columns what rotateRows does to rows.
func rotateColumns(a []float64, p, q, n int, c, s float64) {
	for k := 0; k < n*n; k += n {
		x, y := a[k+p], a[k+q]
		a[k+p], a[k+q] = c*x-s*y, s*x+c*y
	}
}

// sort sets the values to the diagonal of a, ascending, and brings the vectors in
// the same order.
func (e *eigen) sort(a []float64) {
	n := len(e.values)
	order, old := make([]int, n), slices.Clone(e.vectors)
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(a[i*n+i], a[j*n+j])
	})
	for k, i := range order {
		e.values[k] = a[i*n+i]
		copy(e.vector(k), old[i*n:(i+1)*n])
	}
}
