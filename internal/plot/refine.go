package plot

// Refined returns the field with n steps in place of each of its own, along both
// parameters, by cubic convolution (Keys, 1981; from memory): what is a quadratic comes
// out exactly, at the edges too. Beside a hole it is linear, and a hole stays one. A
// field with fewer than three values along a parameter, or n below 2, stays as it is.
func (g Grid) Refined(n int) Grid {
	columns, rows := len(g.X), len(g.Y)
	if n < 2 || columns < 3 || rows < 3 {
		return g
	}
	out := Grid{X: finer(g.X, n), Y: finer(g.Y, n)}
	wide := make([]float64, len(out.X)*rows)
	for row := range rows {
		refine(wide[row*len(out.X):], 1, g.Z[row*columns:], 1, columns, n)
	}
	out.Z = make([]float64, len(out.X)*len(out.Y))
	for col := range out.X {
		refine(out.Z[col:], len(out.X), wide[col:], len(out.X), rows, n)
	}
	return out
}

// finer returns values with n even steps in place of each.
func finer(values []float64, n int) []float64 {
	var out []float64
	for i := range len(values) - 1 {
		for k := range n {
			out = append(out, values[i]+(values[i+1]-values[i])*float64(k)/float64(n))
		}
	}
	return append(out, values[len(values)-1])
}

// refine sets a line of a finer field from one of count values; values that follow each
// other stand a step apart.
func refine(dst []float64, dstStep int, src []float64, srcStep, count, n int) {
	at := func(i int) float64 { return src[i*srcStep] }
	for i := range count - 1 {
		b, c := at(i), at(i+1)
		a, d := 0.0, 0.0
		if i > 0 {
			a = at(i - 1)
		} else {
			a = 3*b - 3*c + at(2)
		}
		if i+2 < count {
			d = at(i + 2)
		} else {
			d = 3*c - 3*b + at(count-3)
		}
		for k := range n {
			dst[(i*n+k)*dstStep] = between(a, b, c, d, float64(k)/float64(n))
		}
	}
	dst[(count-1)*n*dstStep] = at(count - 1)
}

// between returns the value a part t of the way from b to c, which stand between a and d.
func between(a, b, c, d, t float64) float64 {
	v := b + t/2*(c-a+t*(2*a-5*b+4*c-d+t*(3*(b-c)+d-a)))
	if finite(v) {
		return v
	}
	if t == 0 {
		return b
	}
	return b + t*(c-b)
}
