package nlp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestPolishAlongBentLimit: the point of a ball that is nearest to one outside, distances
// of the variables counting differently, is a·w/(w + λ) with the λ for which it lies on the
// sphere (Gander, Numerische Mathematik 36, 1980; from memory). From wherever a polish
// starts it gets there, and in few evaluations: the tangent of a sphere leads off it, so
// that steps which are not corrected zigzag in hundreds of tiny ones.
func TestPolishAlongBentLimit(t *testing.T) {
	const starts, evaluations = 20, 50 // the latter in the mean
	weights, a := []float64{1, 30, 1000}, []float64{2, 1.5, -1}
	vars := square(3, -2.5, 2.5)
	for _, radius := range []float64{0.25, 1, 1.9} {
		m := withLimits(weighed(weights, a), 1, ball(radius))
		sc, err := newScale(&Objective{}, m.Size().Residuals)
		if err != nil {
			t.Fatal(err)
		}
		want, box := nearestOnSphere(weights, a, radius), newBox(m, vars)
		rng := rand.New(rand.NewPCG(1, 2))
		for range starts {
			u := []float64{rng.Float64(), rng.Float64(), rng.Float64()}
			l, ok := newPolisher(box, sc, 100, func() {}).run(u)
			if !ok || l.status != Converged || l.broken {
				t.Errorf("radius %g from %.3v: %v after %d evaluations, broken %v", radius, u, l.status, box.count, l.broken)
				continue
			}
			for j, w := range want {
				if got := vars[j].FromUnit(l.u[j]); !near(got, w, 1e-5) {
					t.Errorf("radius %g from %.3v: variable %d is %.8g, want %.8g", radius, u, j, got, w)
				}
			}
		}
		if n := box.count; n > evaluations*starts {
			t.Errorf("radius %g: %d evaluations from %d starts, want at most %d", radius, n, starts, evaluations*starts)
		}
	}
}

// ball is the limit |x| <= radius.
func ball(radius float64) func(x, g []float64, jac *mat.Dense) {
	return func(x, g []float64, jac *mat.Dense) {
		size := math.Sqrt(dot(x, x))
		g[0] = size - radius
		setRow(jac, 0, x[0]/size, x[1]/size, x[2]/size)
	}
}

// weighed is √w·(x - a).
func weighed(w, a []float64) Model {
	return functionModel{Size{len(a), len(a), 0}, func(x []float64, v *Values) bool {
		if v.JR != nil {
			v.JR.Zero()
		}
		for i := range a {
			v.R[i] = math.Sqrt(w[i]) * (x[i] - a[i])
			if v.JR != nil {
				v.JR.Set(i, i, math.Sqrt(w[i]))
			}
		}
		return true
	}}
}

// nearestOnSphere returns the minimiser of a weighed model on a sphere, by bisection of λ.
func nearestOnSphere(w, a []float64, radius float64) (x []float64) {
	low, high := 0.0, 1e6
	for range 200 {
		lambda, size := (low+high)/2, 0.0
		x = x[:0]
		for i := range a {
			x = append(x, a[i]*w[i]/(w[i]+lambda))
			size += x[i] * x[i]
		}
		if math.Sqrt(size) > radius {
			low = lambda
		} else {
			high = lambda
		}
	}
	return x
}
