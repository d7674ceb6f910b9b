package nlp

import "gonum.org/v1/gonum/floats"

// linearLeastSquares returns the d that brings Σ dⱼ·columns[j] nearest to b, by the modified
// Gram-Schmidt method. Applied to b as to one more column it is as accurate as Householder
// reflections (Björck 1967; from memory). A column that is a combination of those before it
// has no part in it. The columns and b are overwritten.
func linearLeastSquares(columns [][]float64, b []float64) []float64 {
	n := len(columns)
	shares := make([]float64, n*n) // of column k in column j, behind row k
	d := make([]float64, n)
	for k, q := range columns {
		square := floats.Dot(q, q)
		if !(square > 0) {
			continue
		}
		for j := k + 1; j < n; j++ {
			shares[k*n+j] = projectOut(columns[j], q, square)
		}
		d[k] = projectOut(b, q, square)
	}
	for k := n - 1; k >= 0; k-- {
		for j := k + 1; j < n; j++ {
			d[k] -= shares[k*n+j] * d[j]
		}
	}
	return d
}

// projectOut makes v orthogonal to q, and returns how many q that took away; square is the
// squared length of q.
func projectOut(v, q []float64, square float64) float64 {
	share := floats.Dot(v, q) / square
	floats.AddScaled(v, -share, q)
	return share
}
