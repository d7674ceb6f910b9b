package solver

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Errors that rounding leaves on lengths of some 300 mm, as shares.
const (
	swingError = 1e-12
	rateError  = 1e-8 // of central differences by 1e-5
)

func randomVec(r *rand.Rand, size float64) Vec {
	return Vec{X: size * r.NormFloat64(), Y: size * r.NormFloat64(), Z: size * r.NormFloat64()}
}

// TestSwing holds both solutions against what they solve.
func TestSwing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 1000 {
		k, d := r3.Unit(randomVec(r, 1)), randomVec(r, 300)
		radius := 50 + 300*r.Float64()
		across := r3.Norm(r3.Sub(d, r3.Scale(r3.Dot(k, d), k)))
		angle := math.Pi * r.Float64()
		for _, branch := range []float64{-1, 1} {
			p, slack := swing(k, d, radius*radius, radius*across*math.Cos(angle), branch)
			for _, tt := range []struct {
				what      string
				got, want float64
			}{
				{"length", r3.Norm(p) / radius, 1},
				{"part along the axis", r3.Dot(k, p) / radius, 0},
				{"product with d", r3.Dot(p, d) / (radius * across), math.Cos(angle)},
				{"slack", slack, math.Sin(angle) * math.Sin(angle)},
				{"branch", branchOf(k, d, p), branch},
			} {
				if !(math.Abs(tt.got-tt.want) <= swingError/math.Max(math.Sin(angle), 1e-3)) {
					t.Errorf("angle %g, branch %g: %s = %.15g, want %.15g", angle, branch, tt.what, tt.got, tt.want)
				}
			}
		}
	}
}

// TestSwingOutOfReach: there is no such vector where d is too near or too far, or
// along the axis.
func TestSwingOutOfReach(t *testing.T) {
	k := Vec{X: 1}
	for _, tt := range []struct {
		name  string
		d     Vec
		h2, c float64
	}{
		{"too far", Vec{Y: 10}, 1, 10.1}, {"too far behind", Vec{Y: 10}, 1, -10.1}, {"along the axis", Vec{X: 10}, 1, 1},
		{"no number", Vec{Y: math.NaN()}, 1, 0},
	} {
		if _, slack := swing(k, tt.d, tt.h2, tt.c, 1); slack > 0 {
			t.Errorf("%s: slack %g, want none", tt.name, slack)
		}
	}
}

// TestCircle turns an arm to and fro.
func TestCircle(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	for range 200 {
		a, p := randomVec(r, 300), randomVec(r, 300)
		b := r3.Add(a, randomVec(r, 200))
		c := newCircle(a, b, p)
		u := r.NormFloat64()
		x, rate := c.at(u)
		if got := c.turnTo(x); !(math.Abs(got-u) <= 1e-10*(1+u*u)) {
			t.Errorf("turnTo(at(%g)) = %g", u, got)
		}
		for _, pivot := range []Vec{a, b} {
			if got, want := r3.Norm(r3.Sub(x, pivot)), r3.Norm(r3.Sub(p, pivot)); !(math.Abs(got-want) <= swingError*1000) {
				t.Errorf("ball is %g mm from a pivot, was %g", got, want)
			}
		}
		const h = 1e-5
		ahead, _ := c.at(u + h)
		behind, _ := c.at(u - h)
		want := r3.Scale(1/(2*h), r3.Sub(ahead, behind))
		if !(r3.Norm(r3.Sub(rate, want)) <= rateError*(1+r3.Norm(want))*10) {
			t.Errorf("rate %v, differences give %v", rate, want)
		}
	}
	none := newCircle(Vec{X: 1}, Vec{X: 1}, Vec{Y: 5})
	if x, _ := none.at(0.1); finite(x) {
		t.Errorf("an arm without axis puts its ball at %v", x)
	}
}
