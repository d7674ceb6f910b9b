package nlp

import (
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// estimate describes the fit at the point now reached.
func (f *fitter) estimate(status Status) Estimate {
	n := f.now
	e := Estimate{
		X:          append([]float64(nil), n.x...),
		Status:     status,
		Iterations: f.iterations, Evaluations: f.count,
	}
	if f.count == 0 || status == NotEvaluable {
		return e
	}
	e.Cost = n.cost
	e.Residuals = append([]float64(nil), n.values.R...)
	e.Weights = append([]float64(nil), n.weights...)
	e.ChiSquare = floats.Dot(n.values.R, n.values.R)
	for _, r := range n.rhs[len(n.values.R):] {
		e.ChiSquare += r * r
	}
	e.Freedom = len(n.rhs) - len(n.x)
	e.decompose(n)
	return e
}

// decompose sets rank, covariance and leverage from the rows with their columns scaled to
// norm 1, which keeps units out of the rank: by QR where every parameter has a prior, since
// the rank is then full, else by singular values.
func (e *Estimate) decompose(n *normal) {
	m, cols := n.rows.Dims()
	norms := make([]float64, cols)
	var a mat.Dense
	a.CloneFrom(n.rows)
	for j := range norms {
		norms[j] = rise(n.columnNorm(j))
		scaleColumn(&a, j, 1/norms[j])
	}
	if len(n.priors) == cols && e.qr(&a, norms) {
		e.Rank = cols
		return
	}
	terms := singularValues(&a)
	e.Rank = rank(terms, max(m, cols))
	e.Leverage = leverage(terms[:e.Rank], len(e.Residuals))
	switch {
	case e.Rank == cols:
		e.Covariance = covariance(terms, norms)
	case e.Status == Converged:
		e.Status = RankDeficient
	}
}

// epsilon is the distance from 1 to the next larger float64.
const epsilon = 0x1p-52

// rank returns how many singular values, largest first, are more than the
// rounding of a matrix of the given size.
func rank(terms []singular, size int) int {
	least := float64(size) * epsilon * terms[0].value
	for k, t := range terms {
		if !(t.value > least) {
			return k
		}
	}
	return len(terms)
}

// covariance returns V S⁻² Vᵀ, each column scaled back by its norm.
func covariance(terms []singular, norms []float64) *mat.SymDense {
	out := mat.NewSymDense(len(norms), nil)
	for _, t := range terms {
		v := make([]float64, len(norms))
		for j, norm := range norms {
			v[j] = t.right[j] / (t.value * norm)
		}
		AddOuter(out, 1, v, v)
	}
	return out
}

// leverage returns the squared norms of the first rows of U.
func leverage(terms []singular, rows int) []float64 {
	out := make([]float64, rows)
	for _, t := range terms {
		for i := range out {
			u := t.left[i] / t.value
			out[i] += u * u
		}
	}
	return out
}
