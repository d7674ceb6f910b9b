package nlp_test

import (
	"math"
	"testing"

	"toewright/optimize/nlp"
)

// TestExtreme finds the largest and the least of curves with known ones, whatever the
// points that are known of them: smooth ones, some with a kink, some that end there.
func TestExtreme(t *testing.T) {
	humps := func(x float64) float64 { return -math.Pow(x*x-0.36, 2) + 0.01*x }
	for _, tt := range []struct {
		name        string
		f           func(float64) float64
		most, least float64
	}{
		{"parabola", func(x float64) float64 { return 3 - (x-0.3)*(x-0.3) }, 3, 3 - 1.3*1.3},
		{"just inside the end", func(x float64) float64 { return math.Cos(x + 0.99) }, 1, math.Cos(1.99)},
		{"just inside the other", func(x float64) float64 { return -math.Abs(x - 0.98) }, 0, -1.98},
		{"line", func(x float64) float64 { return 2*x + 1 }, 3, -1},
		{"flat", func(float64) float64 { return 5 }, 5, 5},
		{"kink", func(x float64) float64 { return math.Abs(x - 0.123) }, 1.123, 0},
		{"wave", func(x float64) float64 { return math.Sin(4 * x) }, 1, -1},
		{"quartic", func(x float64) float64 { return -math.Pow(x+0.41, 4) }, 0, -math.Pow(1.41, 4)},
		{"two humps", humps, brute(humps), humps(-1)},
	} {
		for n := 5; n <= 30; n++ {
			var at, values []float64
			for i := range n + 1 {
				x := -1 + 2*float64(i)/float64(n)
				at, values = append(at, x), append(values, tt.f(x))
			}
			calls := 0
			f := func(x float64) float64 { calls++; return tt.f(x) }
			for least, want := range map[bool]float64{false: tt.most, true: tt.least} {
				x, got := nlp.Extreme(at, values, least, f)
				if !(math.Abs(got-want) <= 1e-6) || tt.f(x) != got {
					t.Errorf("%s, %d pieces, least %t: %.9g at %.9g, want %.9g", tt.name, n, least, got, x, want)
				}
			}
			if calls > 120 {
				t.Errorf("%s, %d pieces: %d calls", tt.name, n, calls)
			}
		}
	}
}

// brute returns the largest value of f between -1 and 1 at a million points.
func brute(f func(float64) float64) float64 {
	most := math.Inf(-1)
	for i := range 1_000_001 {
		most = math.Max(most, f(-1+2e-6*float64(i)))
	}
	return most
}

// TestExtremeOfNone: a curve without a value somewhere that counts has no extreme.
func TestExtremeOfNone(t *testing.T) {
	if _, got := nlp.Extreme([]float64{0, 1, 2}, []float64{0, 1, 0}, false, func(float64) float64 { return math.NaN() }); !math.IsNaN(got) {
		t.Errorf("got %g, want none", got)
	}
}
