package nlp

import (
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// form says how one kind of objective becomes the cost of a local step: a
// convex function of the residuals, written as part of a convex program.
//
// The program's variables are the step p as a fraction of the trust radius,
// then the extras, which bound groups from above and are 0 for no step.
type form interface {
	// extras returns the number of variables beyond the step.
	extras() int
	// cost returns what the step minimises: the objective itself for Peak, half
	// its square for RMS.
	cost(r []float64) float64
	// fill adds the objective and the rows of a step of at most radius; secant is
	// the estimate of the curvature that linear residuals leave out.
	fill(p *program, v *Values, secant *mat.SymDense, radius float64)
	// costGradient writes ∂cost/∂r, by the multipliers of the rows that fill added.
	costGradient(y, r, multipliers []float64)
}

// newForm returns the form of an objective.
func newForm(s *scale) form {
	switch {
	case s.measure == Peak:
		return newPeaks(s)
	case len(s.spans) > len(s.shares):
		return newWorstSquare(s)
	}
	return newMeanSquare(s)
}

// addSquares adds factor·Σ wᵢ jᵢ jᵢᵀ over the rows [from, to) of a Jacobian.
func addSquares(h *mat.SymDense, jac *mat.Dense, weights []float64, from, to int, factor float64) {
	raw := h.RawSymmetric()
	for i := from; i < to; i++ {
		row := jac.RawRowView(i)
		for j, v := range row {
			if v == 0 {
				continue
			}
			out := raw.Data[j*raw.Stride : j*raw.Stride+len(row)]
			for k := j; k < len(row); k++ {
				out[k] += factor * weights[i] * v * row[k]
			}
		}
	}
}

// putHessian writes factor·h, made convex, for the step's variables into a
// matrix of all the program's variables. It changes h.
func putHessian(p *program, out []float64, h *mat.SymDense, factor float64) {
	p.pivots = zeros(p.pivots, h.SymmetricDim()*h.SymmetricDim())
	convex(h, p.pivots)
	n := h.SymmetricDim()
	for j := range n {
		for k := range n {
			out[j*p.n+k] = factor * h.At(j, k)
		}
	}
}

// hessian returns a copy of a matrix for a form to add to, until the next call.
func (p *program) hessian(secant *mat.SymDense) *mat.SymDense {
	if p.sum == nil || p.sum.SymmetricDim() != secant.SymmetricDim() {
		p.sum = mat.NewSymDense(secant.SymmetricDim(), nil)
	}
	p.sum.CopySym(secant)
	return p.sum
}

// copyOf returns a copy of a symmetric matrix.
func copyOf(m *mat.SymDense) *mat.SymDense {
	out := mat.NewSymDense(m.SymmetricDim(), nil)
	out.CopySym(m)
	return out
}

// addGradient adds factor·Σ wᵢ rᵢ jᵢ over [from, to) to the first entries of out.
func addGradient(out []float64, v *Values, weights []float64, from, to int, factor float64) {
	for i := from; i < to; i++ {
		row := v.JR.RawRowView(i)
		floats.AddScaled(out[:len(row)], factor*weights[i]*v.R[i], row)
	}
}

// largest returns the largest coefficient of a Jacobian's row.
func largest(jac *mat.Dense, row int) float64 { return maxAbs(jac.RawRowView(row)) }

// scaleColumn multiplies a column of a matrix; nil stays nil.
func scaleColumn(m *mat.Dense, column int, factor float64) {
	if m == nil {
		return
	}
	raw := m.RawMatrix()
	for i := range raw.Rows {
		raw.Data[i*raw.Stride+column] *= factor
	}
}

// rise is the scale of an extra: the most that its group's figure can change
// within the trust region to first order, or 1 where nothing changes it.
func rise(change float64) float64 {
	if change > 0 {
		return change
	}
	return 1
}
