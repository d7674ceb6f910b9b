package optimize

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// eigenSweeps bounds the sweeps of Jacobi's method. It converges quadratically:
// six to ten sweeps take any symmetric matrix of our sizes to rounding.
const eigenSweeps = 40

// eigen is a symmetric matrix taken apart: the sum over k of values[k]·v·vᵀ, where
// v is vector(k), of length 1 and square to the others.
type eigen struct {
	values  []float64 // ascending
	vectors []float64 // n×n, one vector in each row
}

// vector returns the eigenvector of value k.
func (e *eigen) vector(k int) []float64 {
	n := len(e.values)
	return e.vectors[k*n : (k+1)*n]
}

// eigenOf takes a symmetric matrix of finite numbers apart by Jacobi's rotations
// (Golub and Van Loan, Matrix Computations, 8.5; from memory): small eigenvalues
// of a definite matrix come out as exactly as large ones.
func eigenOf(s *mat.SymDense) *eigen {
	n := s.SymmetricDim()
	a, e := make([]float64, n*n), &eigen{make([]float64, n), make([]float64, n*n)}
	for i := range n {
		e.vectors[i*n+i] = 1
		for j := range n {
			a[i*n+j] = s.At(i, j)
		}
	}
	for range eigenSweeps {
		if !annihilate(a, e.vectors, n) {
			break
		}
	}
	e.sort(a)
	return e
}

// annihilate makes one sweep over the elements above the diagonal of a, turning
// each to zero, and turns the rows of v along. It returns false where none was more
// than rounding beside its diagonal elements.
func annihilate(a, v []float64, n int) bool {
	turned := false
	for p := range n {
		for q := p + 1; q < n; q++ {
			off := a[p*n+q]
			if math.Abs(off) <= epsilon*math.Sqrt(math.Abs(a[p*n+p]))*math.Sqrt(math.Abs(a[q*n+q])) {
				continue
			}
			turned = true
			t := turnTangent(off, (a[q*n+q]-a[p*n+p])/2)
			c := 1 / math.Sqrt(1+t*t)
			turnRows(a[p*n:(p+1)*n], a[q*n:(q+1)*n], c, t*c)
			turnColumns(a, p, q, n, c, t*c)
			turnRows(v[p*n:(p+1)*n], v[q*n:(q+1)*n], c, t*c)
		}
	}
	return turned
}

// turnTangent returns the tangent of the smaller angle that turns an element off
// the diagonal to zero; half is half the difference of the diagonal elements.
func turnTangent(off, half float64) float64 {
	return off / (half + math.Copysign(math.Hypot(half, off), half))
}

// turnRows turns the rows p and q into each other by the angle of cosine c and
// sine s.
func turnRows(p, q []float64, c, s float64) {
	for k, x := range p {
		y := q[k]
		p[k], q[k] = c*x-s*y, s*x+c*y
	}
}

// turnColumns does to two columns what turnRows does to rows.
func turnColumns(a []float64, p, q, n int, c, s float64) {
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
