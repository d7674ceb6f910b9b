package nlp

import (
	"math"
	"testing"
)

func TestRootBetween(t *testing.T) {
	for _, tt := range []struct {
		name   string
		f      func(float64) float64
		lo, hi float64
		want   float64
	}{
		{"line", func(x float64) float64 { return 2*x - 3 }, 0, 10, 1.5},
		{"cosine", func(x float64) float64 { return -math.Cos(x) }, 0, 3, math.Pi / 2},
		{"flat at the root", func(x float64) float64 { return (x - 1) * (x - 1) * (x - 1) }, -1, 4, 1},
		{"steep on one side", func(x float64) float64 { return math.Exp(5*x) - 2 }, -3, 2, math.Ln2 / 5},
		{"at the lower end", func(x float64) float64 { return x }, 0, 1, 0},
	} {
		calls := 0
		got := Root(func(x float64) float64 { calls++; return tt.f(x) }, tt.lo, tt.hi, 1e-10)
		// A root of third order is known to the cube root of rounding only.
		if !near(got, tt.want, 1e-4) || tt.name != "flat at the root" && !near(got, tt.want, 1e-9) {
			t.Errorf("%s: root = %.12g, want %.12g", tt.name, got, tt.want)
		}
		if calls > maxRootSteps {
			t.Errorf("%s: %d calls, want at most %d", tt.name, calls, maxRootSteps)
		}
	}
}
