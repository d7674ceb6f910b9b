package nlp

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// rosenbrock is 10(y-x²), 1-x: zero at (1, 1) along a curved valley.
func rosenbrock() Model {
	return functionModel{Size{2, 2, 0}, func(x []float64, v *Values) bool {
		v.R[0], v.R[1] = 10*(x[1]-x[0]*x[0]), 1-x[0]
		setRow(v.JR, 0, -20*x[0], 10)
		setRow(v.JR, 1, -1, 0)
		return true
	}}
}

// branin is the Branin function as two squares. On [-5, 10]×[0, 15] it has
// three global minima of 0.39788735772973816 = 10/(8π), at (-π, 12.275),
// (π, 2.275) and (3π, 2.475): there the square bracket is 0 and the cosine -1.
func branin() Model {
	const b, c, d, s, q = 5.1 / (4 * math.Pi * math.Pi), 5 / math.Pi, 6, 10, 10 * (1 - 1/(8*math.Pi))
	return functionModel{Size{2, 2, 0}, func(x []float64, v *Values) bool {
		root := math.Sqrt(q*math.Cos(x[0]) + s)
		v.R[0], v.R[1] = x[1]-b*x[0]*x[0]+c*x[0]-d, root
		setRow(v.JR, 0, -2*b*x[0]+c, 1)
		setRow(v.JR, 1, -q*math.Sin(x[0])/(2*root), 0)
		return true
	}}
}

// camelFloor is added to the six-hump camel function to make it a square. The
// function's own minimum is -1.0316284534898774 at ±(0.0898420131, -0.7126564030).
const camelFloor = 2

// sixHumpCamel is √(f+2) for f = (4-2.1x²+x⁴/3)x² + xy + (4y²-4)y².
func sixHumpCamel() Model {
	return functionModel{Size{2, 1, 0}, func(x []float64, v *Values) bool {
		a, b := x[0]*x[0], x[1]*x[1]
		v.R[0] = math.Sqrt((4-2.1*a+a*a/3)*a + x[0]*x[1] + (4*b-4)*b + camelFloor)
		fx := x[0]*(8-8.4*a+2*a*a) + x[1]
		fy := x[0] + x[1]*(16*b-8)
		setRow(v.JR, 0, fx/(2*v.R[0]), fy/(2*v.R[0]))
		return true
	}}
}

// rastrigin has cos ripples over a bowl: 11ⁿ local minima on [-5.12, 5.12]ⁿ and
// the global one, 0, at the origin. Each variable gives x and √10·√(1-cos 2πx),
// the latter written as √20·sin πx to be smooth.
func rastrigin(n int) Model {
	return functionModel{Size{n, 2 * n, 0}, func(x []float64, v *Values) bool {
		if v.JR != nil {
			v.JR.Zero()
		}
		for i, xi := range x {
			v.R[2*i], v.R[2*i+1] = xi, math.Sqrt(20)*math.Sin(math.Pi*xi)
			if v.JR != nil {
				v.JR.Set(2*i, i, 1)
				v.JR.Set(2*i+1, i, math.Sqrt(20)*math.Pi*math.Cos(math.Pi*xi))
			}
		}
		return true
	}}
}

// samples returns count points evenly over [from, to].
func samples(from, to float64, count int) []float64 {
	s := make([]float64, count)
	for i := range s {
		s[i] = from + (to-from)*float64(i)/float64(count-1)
	}
	return s
}

// polynomialFit is c₀ + c₁t + … - f(t) over the samples: linear in c.
func polynomialFit(ts []float64, coefficients int, f func(float64) float64) Model {
	return functionModel{Size{coefficients, len(ts), 0}, func(x []float64, v *Values) bool {
		for i, t := range ts {
			v.R[i] = -f(t)
			power := 1.0
			for j, c := range x {
				v.R[i] += c * power
				if v.JR != nil {
					v.JR.Set(i, j, power)
				}
				power *= t
			}
		}
		return true
	}}
}

// rationalFit is (a + bt)/(1 + ct) - eᵗ over the samples: the best rational
// approximation has four equal extremes, one more than its coefficients.
func rationalFit(ts []float64) Model {
	return functionModel{Size{3, len(ts), 0}, func(x []float64, v *Values) bool {
		for i, t := range ts {
			top, bottom := x[0]+x[1]*t, 1+x[2]*t
			if bottom <= 0 {
				return false
			}
			v.R[i] = top/bottom - math.Exp(t)
			setRow(v.JR, i, 1/bottom, t/bottom, -top*t/(bottom*bottom))
		}
		return true
	}}
}

// withLimits adds limits to a model without any.
func withLimits(m Model, limits int, g func(x, g []float64, jac *mat.Dense)) Model {
	size := m.Size()
	size.Limits = limits
	return functionModel{size, func(x []float64, v *Values) bool {
		g(x, v.G, v.JG)
		return m.Evaluate(x, &Values{R: v.R, JR: v.JR})
	}}
}

// square returns n variables between the same ends.
func square(n int, low, high float64) []Variable {
	v := make([]Variable, n)
	for i := range v {
		v[i] = Variable{Name: string(rune('a' + i)), Min: low, Max: high}
	}
	return v
}
