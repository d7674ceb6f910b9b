package optimize

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// singular is one term of a matrix taken apart: value·u·vᵀ, where u and v have
// length 1 and are square to those of the other terms.
type singular struct {
	value float64
	left  []float64 // value·u, which there is where u is not: a value may be zero
	right []float64 // v
}

// singularsOf takes a matrix of finite numbers apart, the largest value first, into as
// many terms as it has columns. It turns columns into each other until they are square
// (Hestenes 1958; from memory), which leaves small values as exact as large ones.
func singularsOf(a *mat.Dense) []singular {
	_, n := a.Dims()
	terms := make([]singular, n)
	for k := range terms {
		terms[k].left, terms[k].right = column(a, k), make([]float64, n)
		terms[k].right[k] = 1
	}
	for range eigenSweeps {
		if !straighten(terms) {
			break
		}
	}
	for k := range terms {
		terms[k].value = floats.Norm(terms[k].left, 2)
	}
	sort.SliceStable(terms, func(i, j int) bool { return terms[i].value > terms[j].value })
	return terms
}

// straighten makes one sweep over the pairs of columns, turning each until its product is
// zero. It returns false where none was more than rounding.
func straighten(terms []singular) bool {
	turned := false
	for p := range terms {
		for q := range p {
			a, b := &terms[q], &terms[p]
			off, aa, bb := floats.Dot(a.left, b.left), floats.Dot(a.left, a.left), floats.Dot(b.left, b.left)
			if math.Abs(off) <= float64(len(a.left))*epsilon*math.Sqrt(aa)*math.Sqrt(bb) {
				continue
			}
			turned = true
			t := turnTangent(off, (bb-aa)/2)
			c := 1 / math.Sqrt(1+t*t)
			turnRows(a.left, b.left, c, t*c)
			turnRows(a.right, b.right, c, t*c)
		}
	}
	return turned
}
