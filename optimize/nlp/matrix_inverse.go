package nlp

import "gonum.org/v1/gonum/mat"

// Inverse returns that of a symmetric positive definite matrix, by exchanging one
// variable after the other (Gauss and Jordan). It returns false where a pivot is not
// positive.
func Inverse(s *mat.SymDense) (*mat.SymDense, bool) {
	n := s.SymmetricDim()
	out := copyOf(s)
	row := make([]float64, n)
	for k := range n {
		pivot := out.At(k, k)
		if !(pivot > 0) {
			return nil, false
		}
		for j := range row {
			row[j] = out.At(k, j)
		}
		for i := range n {
			for j := i; j < n; j++ {
				out.SetSym(i, j, out.At(i, j)-row[i]*row[j]/pivot)
			}
			out.SetSym(k, i, row[i]/pivot)
		}
		out.SetSym(k, k, -1/pivot)
	}
	out.ScaleSym(-1, out)
	return out, true
}
