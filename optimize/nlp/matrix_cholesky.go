package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// Cholesky replaces the upper triangle of a symmetric n×n matrix, which stands in a row
// by row, by the U of UᵀU = a. It returns false where the matrix is not positive
// definite; what stands in a is then of no use. Our matrices have a side of some ten,
// far below where the blocks of LAPACK's begin to gain.
func Cholesky(a []float64, n int) bool {
	for k := range n {
		row := a[k*n+k : (k+1)*n] // from the diagonal on
		if !(row[0] > 0) || math.IsInf(row[0], 1) {
			return false
		}
		floats.Scale(1/math.Sqrt(row[0]), row)
		for i := 1; i < len(row); i++ {
			below := a[(k+i)*n+k+i : (k+i+1)*n]
			for j, v := range row[i:] {
				below[j] -= row[i] * v
			}
		}
	}
	return true
}

// CholeskySolve replaces x by the solution of UᵀU·y = x.
func CholeskySolve(u []float64, n int, x []float64) {
	CholeskyForward(u, n, x)
	for k := n - 1; k >= 0; k-- {
		row := u[k*n+k : (k+1)*n]
		x[k] = (x[k] - dot(row[1:], x[k+1:])) / row[0]
	}
}

// CholeskyForward replaces x by the solution of Uᵀ·y = x.
func CholeskyForward(u []float64, n int, x []float64) {
	for k := range n {
		row := u[k*n+k : (k+1)*n]
		x[k] /= row[0]
		for j, v := range row[1:] {
			x[k+1+j] -= x[k] * v
		}
	}
}

// invertUpper replaces an upper triangle with a diagonal of no zeros, which stands in u row by
// row as Cholesky leaves it, by its inverse.
func invertUpper(u []float64, n int) {
	for i := n - 1; i >= 0; i-- {
		row := u[i*n : (i+1)*n]
		scale := 1 / row[i]
		// From the right, as what stands to the left is wanted yet.
		for j := n - 1; j > i; j-- {
			sum := 0.0
			for k := i + 1; k <= j; k++ {
				sum += row[k] * u[k*n+j]
			}
			row[j] = -scale * sum
		}
		row[i] = scale
	}
}
