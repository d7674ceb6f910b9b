package nlp

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// program is a convex quadratic program in scaled variables:
//
//	minimise ½ xᵀHx + cᵀx  subject to  Ax <= b
//
// with H positive semidefinite. Single rows may have a quadratic part of their
// own, ½ xᵀQx + ax <= b, with Q positive semidefinite. Reset, fill, then solve;
// the memory is reused.
type program struct {
	n int
	h []float64 // n×n, symmetric, row-major
	c []float64
	a []float64 // rows×n, row-major
	b []float64

	quadratics []quadratic

	sum    *mat.SymDense // scratch of the forms: the Hessian of one row
	pivots []float64     // likewise: its elimination

	box      boxProgram
	interior interiorPoint
	boxed    bool      // solved by box
	lambda   []float64 // multipliers of the solution
}

// quadratic is the quadratic part of one row.
type quadratic struct {
	row int
	q   []float64 // n×n, symmetric, row-major
}

// reset empties the program and gives it n variables.
func (p *program) reset(n int) {
	p.n = n
	p.h = zeros(p.h, n*n)
	p.c = zeros(p.c, n)
	p.a = p.a[:0]
	p.b = p.b[:0]
	p.quadratics = p.quadratics[:0]
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

// addQuadratic gives row i a quadratic part and returns it, all zero, for the caller
// to fill.
func (p *program) addQuadratic(i int) []float64 {
	q := make([]float64, p.n*p.n)
	p.quadratics = append(p.quadratics, quadratic{i, q})
	return q
}

// row returns the coefficients of constraint i.
func (p *program) row(i int) []float64 { return p.a[i*p.n : (i+1)*p.n] }

// objective returns ½ xᵀHx + cᵀx.
func (p *program) objective(x []float64) float64 {
	return quadraticForm(p.h, x)/2 + dot(p.c, x)
}

// solve returns the minimiser and the multiplier of each row, all at least
// zero. Both are valid until the next solve. Where the tolerance cannot be met
// it returns the last iterate: a trust region judges steps by what they do.
func (p *program) solve() (x, multipliers []float64) {
	p.boxed = p.onlyBounds() && p.box.solve(p)
	if p.boxed {
		p.lambda = p.box.multipliers(p.lambda)
		return p.box.x, p.lambda
	}
	return p.solveInside()
}

// solveInside is solve by the interior point.
func (p *program) solveInside() (x, multipliers []float64) {
	s := &p.interior
	scale := p.objectiveScale()
	if scale == 0 {
		s.reset(p, 1)
		p.lambda = s.multipliers(p, 0)
		return s.x, p.lambda
	}
	s.reset(p, scale)
	for range maxInteriorSteps {
		if s.converged() || !s.step() {
			break
		}
	}
	p.lambda = s.multipliers(p, scale)
	return s.x, p.lambda
}

// active reports whether constraint i holds the solution: its multiplier, not its
// slack, is the one that stays.
func (p *program) active(i int) bool {
	if p.boxed {
		return p.box.active(i)
	}
	return p.interior.active(i)
}

// onlyBounds reports whether the rows are x ≤ b and -x ≤ b for each variable in
// turn, and no more.
func (p *program) onlyBounds() bool {
	if p.rows() != 2*p.n || len(p.quadratics) > 0 {
		return false
	}
	for i := range p.rows() {
		want := float64(1 - 2*(i%2))
		for j, v := range p.row(i) {
			if j == i/2 && v != want || j != i/2 && v != 0 {
				return false
			}
		}
	}
	return true
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

// quadraticForm returns xᵀHx.
func quadraticForm(h, x []float64) float64 {
	n, sum := len(x), 0.0
	for i, xi := range x {
		sum += xi * dot(h[i*n:(i+1)*n], x)
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
