package solver

import "math"

// bordered sets a.m to the Jacobian by state and parameter at x over the row
// a.border, columns scaled, and t.f to the residual.
func (t *tracer) bordered(x *column) bool {
	a, n := &t.arc, t.n
	t.guess = *x
	t.guess[n] = 0
	t.sys.linearise(&t.guess, x[n], &t.f, &t.jac, &t.rate)
	for i := range n {
		for j := range n {
			a.m[i][j] = t.jac[i][j] / weight(j, n)
		}
		a.m[i][n] = t.rate[i]
	}
	for j := range n + 1 {
		a.m[n][j] = a.border[j]
	}
	return a.lu.factor(&a.m, n+1) && a.lu.sound()
}

// arcTangent sets out to the unit tangent of the solution curve at x, scaled, on
// the side of prev or, where prev is nil, towards s growing in direction.
func (t *tracer) arcTangent(x, prev *column, direction float64, out *column) bool {
	n := t.n
	a := &t.arc
	if prev != nil {
		a.border = *prev
	} else {
		a.border = column{}
		a.border[n] = 1
	}
	if !t.bordered(x) && !t.anyBorder(x) {
		return false
	}
	a.rhs = column{}
	a.rhs[n] = 1
	a.lu.solve(&a.rhs, out)
	norm := 1 / math.Sqrt(product(out, out, n+1))
	if prev == nil {
		norm = math.Copysign(norm, out[n]*direction)
	}
	for i := range n + 1 {
		out[i] *= norm
	}
	// A row's part across the tangent lies in the span of the others.
	a.det = a.lu.det / product(&a.border, out, n+1)
	return !math.IsNaN(a.det) && !math.IsInf(norm, 0)
}

// anyBorder looks for a unit row that makes the bordered matrix regular: at a
// turning point itself the parameter's own row does not.
func (t *tracer) anyBorder(x *column) bool {
	for i := range t.n {
		t.arc.border = column{}
		t.arc.border[i] = 1
		if t.bordered(x) {
			return true
		}
	}
	return false
}

// arcTo sets a.next to the solution at the given length along the tangent from
// a.x, in the plane square to the tangent. It returns false where the corrections
// do not stay small beside the step.
func (t *tracer) arcTo(step float64) bool {
	a, n := &t.arc, t.n
	a.next = a.x
	for i := range n + 1 {
		a.next[i] += step * a.tangent[i] / weight(i, n)
	}
	total := 0.0
	a.border = a.tangent
	for range maxCorrections {
		if !t.bordered(&a.next) {
			return false
		}
		small := largest(&t.f, n) <= arcResidual
		a.rhs = t.f
		a.rhs[n] = 0
		a.lu.solve(&a.rhs, &a.rhs)
		size := 0.0
		for i := range n + 1 {
			size = math.Max(size, math.Abs(a.rhs[i]))
			a.next[i] -= a.rhs[i] / weight(i, n)
		}
		total += size
		if !(total <= arcTrust*math.Abs(step)+arcSlack) {
			return false
		}
		if small {
			return true
		}
	}
	return false
}
