package nlp

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

const (
	// proximal is the least curvature of a step, as a fraction of the largest
	// coefficient of its program: a variable without effect stays where it is.
	proximal = 1e-9
	// firstPenalty is the cost of breaking a limit, as a multiple of what the
	// objective can gain by it to first order.
	firstPenalty = 10
	// penaltyGrowth raises a penalty that does not make the limits hold, and
	// maxPenalty is how far in all; beyond it the limits contradict each other.
	penaltyGrowth, maxPenalty = 10, 1e8
	// limitMargin is how far inside a limit a step aims, as a fraction of the
	// change of the limit over the whole range of the variables, so that
	// rounding leaves a limit that acts held rather than broken.
	limitMargin = 1e-11
)

// stepper builds and solves the convex program of one local step.
//
// Its variables are the step as a fraction of the radius, the extras of the
// form, and with limits one more that lets all of them be broken at a penalty.
// Its rows are two bounds for each variable, the rows of the form, one for each
// limit, and the floor of the extra violation.
type stepper struct {
	form    form
	size    Size
	program program
	hessian *curvature

	penalty, penaltyCap float64 // 0 before the first step with limits
	raised              bool    // a penalty has been, and does not fall any more
	firstLimit          int     // row of the first limit
	steepest            float64 // largest derivative of a limit at the last step
	left                float64 // by how much the last step would break a limit

	target []float64 // the unit variables after the step
	y, mu  []float64 // multipliers of residuals and limits

	moved, change []float64 // scratch of learn
}

func newStepper(f form, size Size) *stepper {
	return &stepper{
		form:    f,
		size:    size,
		hessian: newCurvature(size.Variables),
		target:  make([]float64, size.Variables),
		y:       make([]float64, size.Residuals),
		mu:      make([]float64, size.Limits),
		moved:   make([]float64, size.Variables),
		change:  make([]float64, size.Variables),
	}
}

// reset forgets what steps from other points have taught.
func (s *stepper) reset() {
	s.hessian.s.Zero()
	s.penalty = 0
	s.raised = false
}

// merit is what a step must reduce: the cost plus the penalty for the largest
// broken limit.
func (s *stepper) merit(v *Values) float64 {
	return s.form.cost(v.R) + s.penalty*v.violation()
}

// solve sets target to the best step from now within radius by the convex
// model, and returns the reduction of merit that the model predicts.
func (s *stepper) solve(now *point, radius float64) float64 {
	s.build(now, radius)
	x, multipliers := s.program.solve()
	s.setTarget(now.u, x, radius)
	if s.size.Limits > 0 {
		copy(s.mu, multipliers[s.firstLimit:])
		s.adaptPenalty(now, x)
	}
	return -s.program.objective(x)
}

// build fills the program.
func (s *stepper) build(now *point, radius float64) {
	n := s.size.Variables
	total := n + s.form.extras()
	if s.size.Limits > 0 {
		total++
	}
	s.program.reset(total)
	s.addBounds(now.u, radius)
	s.form.fill(&s.program, &now.values, s.hessian.s, radius)
	scale := s.program.objectiveScale()
	for j := range n {
		s.program.h[j*total+j] += proximal * scale
	}
	if s.size.Limits > 0 {
		s.addLimits(&now.values, radius, scale)
	}
}

// addBounds keeps the step inside the trust region and the unit box.
func (s *stepper) addBounds(u []float64, radius float64) {
	for j, v := range u {
		s.program.addRow(math.Min(1, (1-v)/radius))[j] = 1
		s.program.addRow(math.Min(1, v/radius))[j] = -1
	}
}

// addLimits adds the linearised limits, all of which may be broken by as much
// as the last variable says, in a unit that keeps its cost at a fixed multiple
// of the objective's scale.
func (s *stepper) addLimits(v *Values, radius, scale float64) {
	last, broken := s.program.n-1, v.violation()
	s.firstLimit = s.program.rows()
	s.steepest = 0
	for k, g := range v.G {
		steepest := largest(v.JG, k)
		row := s.program.addRow(broken - g - limitMargin*steepest)
		for j, d := range v.JG.RawRowView(k) {
			row[j] = radius * d
		}
		s.steepest = math.Max(s.steepest, steepest)
	}
	own := firstPenalty * rise(scale) / rise(radius*s.steepest)
	switch {
	case s.penalty == 0:
		s.penalty, s.penaltyCap = own, maxPenalty*own
	case !s.raised: // a merit that is stiffer than it need be goes along bent limits in tiny steps
		s.penalty = math.Min(s.penalty, own)
	}
	s.program.c[last] = firstPenalty * rise(scale)
	unit := s.program.c[last] / s.penalty
	for k := range v.G {
		s.program.row(s.firstLimit + k)[last] = -unit
	}
	s.program.addRow(broken)[last] = -unit
}

// adaptPenalty raises the penalty, for the steps to come, where the program
// found it cheaper to leave limits broken.
func (s *stepper) adaptPenalty(now *point, x []float64) {
	last := s.program.n - 1
	floor := s.program.rows() - 1
	s.left = now.values.violation() - s.program.row(floor)[last]*x[last]
	if s.left > limitTolerance*s.steepest && !s.program.active(floor) && s.penalty < s.penaltyCap {
		s.penalty *= penaltyGrowth
		s.raised = true
	}
}

// correct solves the last program again with limits that have bent as a trial of its step
// has shown, their slopes kept. It returns false, and solves nothing, where none is broken
// by more than the step let it be.
func (s *stepper) correct(now, trial *point, radius float64) bool {
	if !(trial.values.violation() > s.left+limitTolerance*s.steepest) {
		return false
	}
	for j := range s.moved {
		s.moved[j] = trial.u[j] - now.u[j]
	}
	for k, g := range trial.values.G {
		bend := g - now.values.G[k] - dot(now.values.JG.RawRowView(k), s.moved)
		s.program.b[s.firstLimit+k] -= bend
	}
	x, _ := s.program.solve()
	s.setTarget(now.u, x, radius)
	return true
}

// setTarget adds the step to u. A variable whose bound acts ends exactly on it.
func (s *stepper) setTarget(u, x []float64, radius float64) {
	for j, v := range u {
		switch {
		case 1-v <= radius && s.program.active(2*j):
			s.target[j] = 1
		case v <= radius && s.program.active(2*j+1):
			s.target[j] = 0
		default:
			s.target[j] = clamp(v+radius*x[j], 0, 1)
		}
	}
}

// updateHessian updates the curvature from the derivatives at the two ends of a step.
func (s *stepper) updateHessian(from, to *point) {
	first := 2 * s.size.Variables
	s.form.costGradient(s.y, to.values.R, s.program.lambda[first:])
	for j := range s.moved {
		s.moved[j] = to.u[j] - from.u[j]
	}
	clear(s.change)
	addDifference(s.change, to.values.JR, from.values.JR, s.y)
	if s.size.Limits > 0 {
		addDifference(s.change, to.values.JG, from.values.JG, s.mu)
	}
	s.hessian.update(s.moved, s.change)
}

// addDifference adds (a-b)ᵀy to out.
func addDifference(out []float64, a, b *mat.Dense, y []float64) {
	for i, f := range y {
		if f == 0 {
			continue
		}
		rowA, rowB := a.RawRowView(i), b.RawRowView(i)
		for j := range out {
			out[j] += f * (rowA[j] - rowB[j])
		}
	}
}
