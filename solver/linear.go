package solver

import "math"

// maxUnknowns is the most unknowns a system has: eight for a solid axle, and
// one more when travel itself is sought at a lock.
const maxUnknowns = 9

// column is a vector of unknowns or residuals; a system of n uses the first n.
type column [maxUnknowns]float64

// matrix is a square matrix by rows; a system of n uses its leading block.
type matrix [maxUnknowns]column

// factors is a LU factorisation with row exchanges, kept in place.
type factors struct {
	n   int
	a   matrix
	row [maxUnknowns]uint8 // row[i] is the row of the matrix that became row i
	inv column             // inverses of the pivots
	det float64            // determinant; 0 where it is singular
}

// factor sets f to the factors of the leading n×n block of m. It returns false
// where a pivot vanishes or is not a number; f must not be solved with then.
func (f *factors) factor(m *matrix, n int) bool {
	f.n, f.a, f.det = n, *m, 1
	for i := range n {
		f.row[i] = uint8(i)
	}
	for k := range n {
		f.pivot(k)
		p := f.a[k][k]
		if !(math.Abs(p) > 0) || math.IsInf(p, 0) {
			f.det = 0
			return false
		}
		f.det *= p
		f.inv[k] = 1 / p
		f.eliminate(k)
	}
	return true
}

// loose is the least pivot, as a share of the largest element, of equations that
// hold something: less is what rounding leaves of links that repeat each other.
const loose = 1e-12

// sound reports whether the factors are more than rounding.
func (f *factors) sound() bool {
	least, most := math.Inf(1), 0.0
	for i := range f.n {
		r := f.a[i][i:f.n]
		least = min(least, math.Abs(r[0]))
		for _, v := range r {
			if v = math.Abs(v); v > most {
				most = v
			}
		}
	}
	return least > loose*most
}

// pivot brings the row of the largest element of column k to row k.
func (f *factors) pivot(k int) {
	best, size := k, math.Abs(f.a[k][k])
	for i := k + 1; i < f.n; i++ {
		if s := math.Abs(f.a[i][k]); s > size {
			best, size = i, s
		}
	}
	if best != k {
		f.a[k], f.a[best] = f.a[best], f.a[k]
		f.row[k], f.row[best] = f.row[best], f.row[k]
		f.det = -f.det
	}
}

// eliminate clears column k below its pivot.
func (f *factors) eliminate(k int) {
	top, inv := f.a[k][k:f.n], f.inv[k]
	for i := k + 1; i < f.n; i++ {
		r := f.a[i][k:f.n][:len(top)] // the length tells the compiler that j is within
		l := r[0] * inv
		r[0] = l
		for j := 1; j < len(top); j++ {
			r[j] -= l * top[j]
		}
	}
}

// solve sets x to the solution of A·x = b. x and b may be the same.
func (f *factors) solve(b, x *column) {
	var y column
	for i := range f.n {
		s := b[f.row[i]]
		for j, v := range f.a[i][:i] {
			s -= v * y[j]
		}
		y[i] = s
	}
	for i := f.n - 1; i >= 0; i-- {
		s, below := y[i], y[i+1:f.n]
		for j, v := range f.a[i][i+1 : f.n] {
			s -= v * below[j]
		}
		y[i] = s * f.inv[i]
	}
	*x = y
}

// solveTransposed sets x to the solution of Aᵀ·x = b. x and b may be the same.
func (f *factors) solveTransposed(b, x *column) {
	y := *b
	for i := range f.n {
		s := y[i]
		for j := range i {
			s -= f.a[j][i] * y[j]
		}
		y[i] = s / f.a[i][i]
	}
	for i := f.n - 1; i >= 0; i-- {
		s := y[i]
		for j := i + 1; j < f.n; j++ {
			s -= f.a[j][i] * y[j]
		}
		y[i] = s
	}
	for i := range f.n {
		x[f.row[i]] = y[i]
	}
}

// product returns the scalar product of the first n of a and b.
func product(a, b *column, n int) float64 {
	sum := 0.0
	for i := range n {
		sum += a[i] * b[i]
	}
	return sum
}
