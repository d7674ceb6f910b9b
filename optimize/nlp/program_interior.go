package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

const (
	// maxInteriorSteps ends a solve that does not converge. Well-scaled
	// programs need 8 to 20 steps.
	maxInteriorSteps = 60
	// gapTolerance is the mean product of slack and multiplier, both scaled to
	// about 1, at which the solve ends. A bound that acts is then met to about
	// 1e-11 of the trust region.
	gapTolerance = 1e-12
	// gapFloor is the least product that a step aims at: smaller ones would leave
	// slacks and multipliers no room to mend the residuals of quadratic rows.
	gapFloor = gapTolerance / 10
	// residualTolerance is the allowed error in the scaled optimality and
	// constraint equations; some hundred roundings.
	residualTolerance = 1e-10
	// boundaryFraction is how much of the way to the nearest zero of a slack or
	// multiplier a step may go. Close to 1, the usual choice.
	boundaryFraction = 0.995
	// minMove ends a solve whose steps have become useless.
	minMove = 1e-10
)

// interiorPoint is a primal-dual interior-point method with Mehrotra's
// predictor and corrector (Nocedal and Wright, Numerical Optimization, 2nd ed.,
// algorithm 16.4; from memory), for small dense programs. The rows and the
// objective are scaled so that their largest coefficients are 1.
type interiorPoint struct {
	n, m       int
	h, c       []float64 // scaled objective
	a, b       []float64 // scaled rows; of quadratic rows the gradient at x
	rowNorm    []float64
	quadratics []quadratic // scaled
	base       []float64   // coefficients of the quadratic rows, in the order of quadratics

	x, slack, mult   []float64
	dual, primal     []float64 // residuals Hx+c+Aᵀλ and Ax+s-b
	centre           []float64 // residual of the slack-multiplier products
	dx, dslack, dmul []float64
	kkt              []float64 // upper Cholesky factor of the Newton system
	lambda           []float64 // multipliers in the caller's scale
}

// reset copies the program in scaled form and sets the starting iterate.
func (s *interiorPoint) reset(p *program, scale float64) {
	s.n, s.m = p.n, p.rows()
	s.h = scaled(s.h, p.h, 1/scale)
	s.c = scaled(s.c, p.c, 1/scale)
	s.a = scaled(s.a, p.a, 1)
	s.b = scaled(s.b, p.b, 1)
	s.rowNorm = zeros(s.rowNorm, s.m)
	for i := range s.m {
		s.rowNorm[i] = maxAbs(s.row(i))
	}
	s.copyQuadratics(p.quadratics)
	for i := range s.m {
		s.normaliseRow(i)
	}
	s.base = s.base[:0]
	for _, b := range s.quadratics {
		s.base = append(s.base, s.row(b.row)...)
	}
	s.x, s.dx = zeros(s.x, s.n), zeros(s.dx, s.n)
	s.dual, s.kkt = zeros(s.dual, s.n), zeros(s.kkt, s.n*s.n)
	for _, v := range []*[]float64{&s.slack, &s.mult, &s.primal, &s.centre, &s.dslack, &s.dmul, &s.lambda} {
		*v = zeros(*v, s.m)
	}
	for i := range s.m {
		s.slack[i] = math.Max(s.b[i], 1)
		s.mult[i] = 1
	}
}

// copyQuadratics copies the quadratic parts and counts them in the norms of their rows.
func (s *interiorPoint) copyQuadratics(quadratics []quadratic) {
	s.quadratics = s.quadratics[:0]
	for _, b := range quadratics {
		s.rowNorm[b.row] = math.Max(s.rowNorm[b.row], maxAbs(b.q))
	}
	for _, b := range quadratics {
		s.quadratics = append(s.quadratics, quadratic{b.row, scaled(nil, b.q, 1/rise(s.rowNorm[b.row]))})
	}
}

// normaliseRow divides constraint i by its norm.
func (s *interiorPoint) normaliseRow(i int) {
	s.rowNorm[i] = rise(s.rowNorm[i])
	row := s.row(i)
	for j := range row {
		row[j] /= s.rowNorm[i]
	}
	s.b[i] /= s.rowNorm[i]
}

func (s *interiorPoint) row(i int) []float64 { return s.a[i*s.n : (i+1)*s.n] }

// gap returns the mean product of slack and multiplier.
func (s *interiorPoint) gap() float64 {
	if s.m == 0 {
		return 0
	}
	return dot(s.slack, s.mult) / float64(s.m)
}

// converged updates the residuals and reports whether the iterate is optimal.
func (s *interiorPoint) converged() bool {
	s.linearise()
	for j := range s.n {
		s.dual[j] = s.c[j] + dot(s.h[j*s.n:(j+1)*s.n], s.x)
	}
	for i := range s.m {
		row := s.row(i)
		s.primal[i] = s.slack[i] - s.b[i] + dot(row, s.x)
		for j, v := range row {
			s.dual[j] += v * s.mult[i]
		}
	}
	for _, b := range s.quadratics { // the gradient counted the quadratic part twice
		s.primal[b.row] -= quadraticForm(b.q, s.x) / 2
	}
	return s.gap() <= gapTolerance && maxAbs(s.dual) <= residualTolerance && maxAbs(s.primal) <= residualTolerance
}

// linearise sets the quadratic rows to their gradients at x.
func (s *interiorPoint) linearise() {
	for k, b := range s.quadratics {
		base, row := s.base[k*s.n:(k+1)*s.n], s.row(b.row)
		for j := range row {
			row[j] = base[j] + dot(b.q[j*s.n:(j+1)*s.n], s.x)
		}
	}
}

// step makes one predictor-corrector step. It returns false where the system
// cannot be solved or the step no longer moves.
func (s *interiorPoint) step() bool {
	if !s.factorise() {
		return false
	}
	for i := range s.m {
		s.centre[i] = s.slack[i] * s.mult[i]
	}
	s.direction()
	target := math.Max(s.centring(s.reach(1)), gapFloor)
	for i := range s.m {
		s.centre[i] = s.slack[i]*s.mult[i] + s.dslack[i]*s.dmul[i] - target
	}
	s.direction()
	if !AllFinite(s.dx) || !AllFinite(s.dslack) || !AllFinite(s.dmul) {
		return false
	}
	move := s.reach(boundaryFraction)
	s.advance(move)
	return move > minMove
}

// factorise forms H + Σ λQ + Aᵀ(Λ/S)A and its Cholesky factor, which there is where
// it returns true.
func (s *interiorPoint) factorise() bool {
	copy(s.kkt, s.h)
	for _, b := range s.quadratics {
		floats.AddScaled(s.kkt, s.mult[b.row], b.q)
	}
	for i := range s.m {
		s.addOuter(s.row(i), s.mult[i]/s.slack[i])
	}
	return Cholesky(s.kkt, s.n)
}

// addOuter adds weight·row·rowᵀ to the upper triangle of the system.
func (s *interiorPoint) addOuter(row []float64, weight float64) {
	for j, v := range row {
		if v == 0 {
			continue
		}
		out := s.kkt[j*s.n+j : (j+1)*s.n]
		for k, w := range row[j:] {
			out[k] += weight * v * w
		}
	}
}

// direction solves the Newton equations for the residuals now held.
func (s *interiorPoint) direction() {
	for j, v := range s.dual {
		s.dx[j] = -v
	}
	for i := range s.m {
		f := (s.mult[i]*s.primal[i] - s.centre[i]) / s.slack[i]
		for j, v := range s.row(i) {
			s.dx[j] -= v * f
		}
	}
	CholeskySolve(s.kkt, s.n, s.dx)
	for i := range s.m {
		s.dslack[i] = -s.primal[i] - dot(s.row(i), s.dx)
		s.dmul[i] = -(s.centre[i] + s.mult[i]*s.dslack[i]) / s.slack[i]
	}
}

// reach returns the longest step, at most 1, that keeps slacks and multipliers
// positive, times the given fraction where one of them limits it.
func (s *interiorPoint) reach(fraction float64) float64 {
	move := 1.0
	for i := range s.m {
		if s.slack[i]+move*s.dslack[i] <= 0 {
			move = -fraction * s.slack[i] / s.dslack[i]
		}
		if s.mult[i]+move*s.dmul[i] <= 0 {
			move = -fraction * s.mult[i] / s.dmul[i]
		}
	}
	return move
}

// centring returns the product that the corrector aims at, after a predictor
// that could go as far as move.
func (s *interiorPoint) centring(move float64) float64 {
	gap, after := s.gap(), 0.0
	if gap == 0 {
		return 0
	}
	for i := range s.m {
		after += (s.slack[i] + move*s.dslack[i]) * (s.mult[i] + move*s.dmul[i])
	}
	ratio := after / float64(s.m) / gap
	return ratio * ratio * ratio * gap
}

// advance moves the iterate along the direction.
func (s *interiorPoint) advance(move float64) {
	for j, v := range s.dx {
		s.x[j] += move * v
	}
	for i := range s.m {
		s.slack[i] += move * s.dslack[i]
		s.mult[i] += move * s.dmul[i]
	}
}

// active reports whether constraint i holds the optimum: its multiplier, not
// its slack, is the one that stays.
func (s *interiorPoint) active(i int) bool { return s.mult[i] > s.slack[i] }

// multipliers returns the multipliers in the scale of the program as given.
func (s *interiorPoint) multipliers(p *program, scale float64) []float64 {
	for i := range p.rows() {
		s.lambda[i] = s.mult[i] * scale / s.rowNorm[i]
	}
	return s.lambda
}

// scaled returns factor·src, in the memory of dst where it is large enough.
func scaled(dst, src []float64, factor float64) []float64 {
	dst = append(dst[:0], src...)
	for i := range dst {
		dst[i] *= factor
	}
	return dst
}
