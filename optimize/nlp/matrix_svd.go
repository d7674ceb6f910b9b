package nlp

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// singular is one term of a singular value decomposition: value·u·vᵀ, where u and v
// have length 1 and are orthogonal to those of the other terms.
type singular struct {
	value float64
	left  []float64 // value·u, which there is where u is not: a value may be zero
	right []float64 // v
}

// singularValues returns the singular value decomposition of a matrix of finite numbers,
// the largest value first, in as many terms as it has columns. One-sided Jacobi rotations
// make the columns orthogonal (Hestenes 1958; from memory), which leaves small values as
// exact as large ones.
func singularValues(a *mat.Dense) []singular {
	_, n := a.Dims()
	terms := make([]singular, n)
	for k := range terms {
		terms[k].left, terms[k].right = Column(a, k), make([]float64, n)
		terms[k].right[k] = 1
	}
	for range jacobiSweeps {
		if !orthogonalise(terms) {
			break
		}
	}
	for k := range terms {
		terms[k].value = floats.Norm(terms[k].left, 2)
	}
	sort.SliceStable(terms, func(i, j int) bool { return terms[i].value > terms[j].value })
	return terms
}

// orthogonalise makes one sweep of rotations over the pairs of columns, after each of which
// the two are orthogonal. It returns false where none was more than rounding.
func orthogonalise(terms []singular) bool {
	rotated := false
	for p := range terms {
		for q := range p {
			a, b := &terms[q], &terms[p]
			off, aa, bb := floats.Dot(a.left, b.left), floats.Dot(a.left, a.left), floats.Dot(b.left, b.left)
			if math.Abs(off) <= float64(len(a.left))*epsilon*math.Sqrt(aa)*math.Sqrt(bb) {
				continue
			}
			rotated = true
			t := jacobiTangent(off, (bb-aa)/2)
			c := 1 / math.Sqrt(1+t*t)
			rotateRows(a.left, b.left, c, t*c)
			rotateRows(a.right, b.right, c, t*c)
		}
	}
	return rotated
}
