package nlp

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// varianceRounding is the share of the largest variance below which what is left of
// a variance is rounding.
const varianceRounding = 1e-12

// CholeskyColumns returns vectors the sum of whose squares v·vᵀ is a covariance: added
// up, each times a standard normal number of its own, they are a draw of it. They
// are the columns of Cholesky's factor, the largest variance that is left first, as
// many as the covariance has rank.
func CholeskyColumns(s *mat.SymDense) [][]float64 {
	rest := copyOf(s)
	n := rest.SymmetricDim()
	var out [][]float64
	least := varianceRounding * rest.At(largestVariance(rest))
	for range n {
		p, _ := largestVariance(rest)
		if !(rest.At(p, p) > least) {
			break
		}
		d := make([]float64, n)
		for i := range d {
			d[i] = rest.At(i, p) / math.Sqrt(rest.At(p, p))
		}
		AddOuter(rest, -1, d, d)
		out = append(out, d)
	}
	return out
}

// largestVariance returns where the largest diagonal element of s stands.
func largestVariance(s *mat.SymDense) (row, column int) {
	for i := range s.SymmetricDim() {
		if s.At(i, i) > s.At(row, row) {
			row = i
		}
	}
	return row, row
}
