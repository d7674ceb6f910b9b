package optimize

import "math"

// program is a convex quadratic program in scaled variables:
//
//	minimise ½ xᵀHx + cᵀx  subject to  Ax <= b
//
// with H positive semidefinite. Reset, fill, then solve; the memory is reused.
type program struct {
	n int
	h []float64 // n×n, symmetric, row-major
	c []float64
	a []float64 // rows×n, row-major
	b []float64

	interior interiorPoint
}

// reset empties the program and gives it n variables.
func (p *program) reset(n int) {
	p.n = n
	p.h = zeros(p.h, n*n)
	p.c = zeros(p.c, n)
	p.a = p.a[:0]
	p.b = p.b[:0]
}

// rows returns the number of constraints so far.
func (p *program) rows() int { return len(p.b) }

// addRow appends the constraint row·x <= b and returns its row, all zero, for
// the caller to fill before the next call.
func (p *program) addRow(b float64) []float64 {
	from := len(p.a)
	for range p.n {
		p.a = append(p.a, 0)
	}
	p.b = append(p.b, b)
	return p.a[from:]
}

// row returns the coefficients of constraint i.
func (p *program) row(i int) []float64 { return p.a[i*p.n : (i+1)*p.n] }

// objective returns ½ xᵀHx + cᵀx.
func (p *program) objective(x []float64) float64 {
	sum := 0.0
	for i, xi := range x {
		sum += xi * (p.c[i] + 0.5*dot(p.h[i*p.n:(i+1)*p.n], x))
	}
	return sum
}

// solve returns the minimiser and the multiplier of each row, all at least
// zero. Both are valid until the next solve. Where the tolerance cannot be met
// it returns the last iterate: a trust region judges steps by what they do.
func (p *program) solve() (x, multipliers []float64) {
	s := &p.interior
	scale := p.objectiveScale()
	if scale == 0 {
		s.reset(p, 1)
		return s.x, s.multipliers(p, 0)
	}
	s.reset(p, scale)
	for range maxInteriorSteps {
		if s.converged() || !s.step() {
			break
		}
	}
	return s.x, s.multipliers(p, scale)
}

// objectiveScale returns the largest coefficient of the objective.
func (p *program) objectiveScale() float64 {
	return math.Max(maxAbs(p.h), maxAbs(p.c))
}

func maxAbs(s []float64) float64 {
	top := 0.0
	for _, v := range s {
		top = math.Max(top, math.Abs(v))
	}
	return top
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

// zeros returns n zeros, in the memory of s where it is large enough.
func zeros(s []float64, n int) []float64 {
	if cap(s) < n {
		return make([]float64, n)
	}
	s = s[:n]
	clear(s)
	return s
}
