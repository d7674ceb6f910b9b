package optimize

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

// decompose sets rank, covariance and leverage from the singular values of the
// rows with their columns scaled to norm 1, which keeps units out of the rank.
func (e *Estimate) decompose(n *normal) {
	m, cols := n.rows.Dims()
	norms := make([]float64, cols)
	var a mat.Dense
	a.CloneFrom(n.rows)
	for j := range norms {
		norms[j] = rise(n.columnNorm(j))
		scaleColumn(&a, j, 1/norms[j])
	}
	var svd mat.SVD
	if !svd.Factorize(&a, mat.SVDThin) {
		return
	}
	values := svd.Values(nil)
	e.Rank = rank(values, max(m, cols))
	e.Leverage = leverage(&svd, len(e.Residuals), e.Rank)
	switch {
	case e.Rank == cols:
		e.Covariance = covariance(&svd, values, norms)
	case e.Status == Converged:
		e.Status = RankDeficient
	}
}

// epsilon is the distance from 1 to the next larger float64.
const epsilon = 0x1p-52

// rank returns how many singular values, largest first, are more than the
// rounding of a matrix of the given size.
func rank(values []float64, size int) int {
	least := float64(size) * epsilon * values[0]
	for k, v := range values {
		if !(v > least) {
			return k
		}
	}
	return len(values)
}

// covariance returns V S⁻² Vᵀ, each column scaled back by its norm.
func covariance(svd *mat.SVD, values, norms []float64) *mat.SymDense {
	var v mat.Dense
	svd.VTo(&v)
	for j, norm := range norms {
		for k, s := range values {
			v.Set(j, k, v.At(j, k)/(s*norm))
		}
	}
	out := mat.NewSymDense(len(norms), nil)
	out.SymOuterK(1, &v)
	return out
}

// leverage returns the squared norms of the first rows of U, over its first
// rank columns.
func leverage(svd *mat.SVD, rows, rank int) []float64 {
	var u mat.Dense
	svd.UTo(&u)
	out := make([]float64, rows)
	for i := range out {
		row := u.RawRowView(i)[:rank]
		out[i] = floats.Dot(row, row)
	}
	return out
}
