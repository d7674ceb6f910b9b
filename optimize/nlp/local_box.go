package nlp

import "context"

// point is a place in the unit box with what the model gives there. The
// derivatives are with respect to the unit variables.
type point struct {
	u      []float64
	values Values
}

func newPoint(s Size) *point {
	return &point{u: make([]float64, s.Variables), values: NewValues(s)}
}

// unitBox evaluates a model over the unit box of its variables, counts the
// evaluations and stops when they run out or the context ends.
type unitBox struct {
	ctx       context.Context
	model     Model
	variables []Variable
	x         []float64 // scratch, in the variables' units
	count     int       // evaluations so far
	budget    int       // evaluations allowed
}

// stopped returns the status that ends the run now, or NotRun to go on.
func (b *unitBox) stopped() Status {
	switch {
	case b.ctx.Err() != nil:
		return Cancelled
	case b.count >= b.budget:
		return EvaluationLimit
	}
	return NotRun
}

// evaluate fills pt.values, derivatives included, at pt.u.
func (b *unitBox) evaluate(pt *point) bool {
	b.place(pt.u)
	b.count++
	if !b.model.Evaluate(b.x, &pt.values) || !pt.values.finite() {
		return false
	}
	for j, v := range b.variables {
		width := v.Max - v.Min
		scaleColumn(pt.values.JR, j, width)
		scaleColumn(pt.values.JG, j, width)
	}
	return true
}

// place sets x from the unit variables.
func (b *unitBox) place(u []float64) {
	for j, v := range b.variables {
		b.x[j] = v.FromUnit(u[j])
	}
}
