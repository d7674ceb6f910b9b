package optimize

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// minimise runs a strategy for a number of generations and returns the best value.
func (c *cmaes) minimise(f func([]float64) float64, generations int) float64 {
	best := math.Inf(1)
	x, values, order := make([]float64, c.n), make([]float64, c.population), make([]int, c.population)
	for range generations {
		for k := range values {
			c.sample(k, x)
			values[k], order[k] = f(x), k
			best = math.Min(best, values[k])
		}
		slices.SortFunc(order, func(i, j int) int { return int(math.Copysign(1, values[i]-values[j])) })
		c.adapt(order)
	}
	return best
}

// TestCMAESConverges takes functions whose difficulty is in the covariance to their
// minimum, 0, from three seeds.
func TestCMAESConverges(t *testing.T) {
	tests := []struct {
		name        string
		n           int
		generations int // some 1.5 times what the slowest seed takes
		f           func(x []float64) float64
	}{
		{"sphere", 4, 120, func(x []float64) float64 { return dot(x, x) }},
		{"ellipsoid, axes as 1 to 1000", 5, 500, func(x []float64) float64 {
			sum := 0.0
			for i, v := range x {
				sum += math.Pow(1e6, float64(i)/4) * v * v
			}
			return sum
		}},
		{"turned valley", 2, 250, func(x []float64) float64 {
			a, b := x[0]+x[1]-1, x[0]-x[1]
			return a*a + 1e6*b*b
		}},
		{"rosenbrock", 3, 500, func(x []float64) float64 {
			sum := 0.0
			for i := range 2 {
				a, b := x[i+1]-x[i]*x[i], 1-x[i]
				sum += 100*a*a + b*b
			}
			return sum
		}},
		{"one variable", 1, 120, func(x []float64) float64 { return (x[0] - 3) * (x[0] - 3) }},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for seed := range uint64(3) {
				mean := make([]float64, tt.n)
				for i := range mean {
					mean[i] = 0.5
				}
				c := newCMAES(mean, 0.3, rand.New(rand.NewPCG(seed, 1)))
				if got := c.minimise(tt.f, tt.generations); !(got <= 1e-12) {
					t.Errorf("seed %d: best %g after %d generations, want 1e-12", seed, got, tt.generations)
				}
			}
		})
	}
}

// TestCMAESIgnoresScale checks that only the order of values counts.
func TestCMAESIgnoresScale(t *testing.T) {
	f := func(x []float64) float64 { return x[0]*x[0] + 4*x[1]*x[1] }
	run := func(g func(float64) float64) []float64 {
		c := newCMAES([]float64{1, 2}, 0.5, rand.New(rand.NewPCG(1, 2)))
		c.minimise(func(x []float64) float64 { return g(f(x)) }, 20)
		return c.mean
	}
	a, b := run(func(v float64) float64 { return v }), run(func(v float64) float64 { return math.Log(v) })
	if !slices.Equal(a, b) {
		t.Errorf("means %v and %v, want the same for a function and its logarithm", a, b)
	}
}

// TestCMAESLearnsHessian checks that the covariance comes to the inverse of a
// quadratic's Hessian, up to a factor.
func TestCMAESLearnsHessian(t *testing.T) {
	hessian := mat.NewSymDense(2, []float64{50, 20, 20, 10})
	c := newCMAES([]float64{0.5, 0.5}, 0.3, rand.New(rand.NewPCG(3, 4)))
	c.minimise(func(x []float64) float64 {
		v := mat.NewVecDense(2, x)
		return mat.Inner(v, hessian, v)
	}, 80)
	s := mat.NewSymDense(2, []float64{c.covariance[0], c.covariance[2], c.covariance[2], c.covariance[3]})
	var product mat.Dense
	product.Mul(s, hessian)
	var e mat.Eigen
	e.Factorize(&product, mat.EigenNone)
	v := e.Values(nil)
	if ratio := real(v[0]) / real(v[1]); !(ratio > 0.4 && ratio < 2.5) { // the Hessian's own is 33
		t.Errorf("eigenvalues of covariance times Hessian %v, want a ratio near 1", v)
	}
}
