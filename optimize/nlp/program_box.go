package nlp

import "math"

// boxProgram solves a strictly convex program whose only rows are an upper and a
// lower bound for each variable, by an active set: variables are held at bounds
// and let go again one at a time. It is exact to rounding and, for few variables,
// many times faster than the interior point.
type boxProgram struct {
	n          int
	x, g, d    []float64 // iterate, gradient, direction
	at         []int8    // +1 and -1 where a variable is held at its upper or lower bound
	factor     []float64 // of the Hessian, with rows and columns of held variables left out
	low, upper []float64
}

// solve brings b to the minimiser of p. It returns false where the Hessian is not
// positive definite, or where rounding keeps the active set from settling.
func (b *boxProgram) solve(p *program) bool {
	b.reset(p)
	for range 3 * (b.n + 1) * (b.n + 1) {
		if !b.direction(p) {
			return false
		}
		if b.advance() {
			continue // a bound was met on the way
		}
		if !b.release(p) {
			return true
		}
	}
	return false
}

// reset starts at 0, which every step keeps within its bounds.
func (b *boxProgram) reset(p *program) {
	n := p.n
	b.n = n
	b.x, b.g, b.d = zeros(b.x, n), zeros(b.g, n), zeros(b.d, n)
	b.low, b.upper = zeros(b.low, n), zeros(b.upper, n)
	b.factor = zeros(b.factor, n*n)
	if cap(b.at) < n {
		b.at = make([]int8, n)
	}
	b.at = b.at[:n]
	clear(b.at)
	for j := range n {
		b.upper[j], b.low[j] = p.b[2*j], -p.b[2*j+1]
	}
}

// direction sets d to the way from x to the minimiser over the variables that are
// free, and g to the gradient at x.
func (b *boxProgram) direction(p *program) bool {
	n := b.n
	for i := range n {
		b.g[i] = p.c[i] + dot(p.h[i*n:(i+1)*n], b.x)
	}
	for i := range n { // Cholesky's factors, by rows; a held variable has a row of the unit matrix
		f := b.factor[i*n : (i+1)*n]
		for j := range i + 1 {
			f[j] = b.free(p.h, i, j) - dot(f[:j], b.factor[j*n:j*n+j])
			if j < i {
				f[j] /= b.factor[j*n+j]
			}
		}
		if !(f[i] > 0) {
			return false
		}
		f[i] = math.Sqrt(f[i])
	}
	b.substitute()
	return true
}

// free returns an element of the Hessian where both variables are free, of the
// unit matrix elsewhere.
func (b *boxProgram) free(h []float64, i, j int) float64 {
	switch {
	case b.at[i] == 0 && b.at[j] == 0:
		return h[i*b.n+j]
	case i == j:
		return 1
	}
	return 0
}

// substitute sets d by the factors.
func (b *boxProgram) substitute() {
	n := b.n
	for i := range n {
		b.d[i] = 0
		if b.at[i] == 0 {
			b.d[i] = -b.g[i]
		}
		f := b.factor[i*n : (i+1)*n]
		b.d[i] = (b.d[i] - dot(f[:i], b.d)) / f[i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			b.d[i] -= b.factor[k*n+i] * b.d[k]
		}
		b.d[i] /= b.factor[i*n+i]
	}
}

// advance goes along d up to its end or the first bound, where it holds the
// variable. It reports whether it met a bound.
func (b *boxProgram) advance() bool {
	step, met, side := 1.0, -1, int8(0)
	for j, d := range b.d {
		switch {
		case d > 0 && b.x[j]+step*d > b.upper[j]:
			step, met, side = (b.upper[j]-b.x[j])/d, j, 1
		case d < 0 && b.x[j]+step*d < b.low[j]:
			step, met, side = (b.low[j]-b.x[j])/d, j, -1
		}
	}
	for j := range b.x {
		b.x[j] += step * b.d[j]
	}
	if met < 0 {
		return false
	}
	b.at[met] = side
	b.x[met] = b.bound(met)
	return true
}

// bound returns the bound at which variable j is held.
func (b *boxProgram) bound(j int) float64 {
	if b.at[j] > 0 {
		return b.upper[j]
	}
	return b.low[j]
}

// release lets go the held variable that would gain most by leaving its bound. It
// returns false where none would: at the optimum.
func (b *boxProgram) release(p *program) bool {
	gain, which := 0.0, -1
	for j := range b.x {
		if b.at[j] == 0 {
			continue
		}
		b.g[j] = p.c[j] + dot(p.h[j*b.n:(j+1)*b.n], b.x)
		if pull := float64(b.at[j]) * b.g[j]; pull > gain {
			gain, which = pull, j
		}
	}
	if which < 0 {
		return false
	}
	b.at[which] = 0
	return true
}

// active reports whether bound i, counted as the rows of the program, holds the
// optimum.
func (b *boxProgram) active(i int) bool {
	side := int8(1)
	if i%2 == 1 {
		side = -1
	}
	j := i / 2
	return b.at[j] == side && float64(side)*b.g[j] < 0
}

// multipliers returns those of the bounds, in the memory of out where it is large
// enough.
func (b *boxProgram) multipliers(out []float64) []float64 {
	out = zeros(out, 2*b.n)
	for i := range out {
		if b.active(i) {
			out[i] = math.Abs(b.g[i/2])
		}
	}
	return out
}
