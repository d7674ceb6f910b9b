package optimize_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"toewright/optimize"
)

// sampleSize makes the interval ends of a sum of four below uncertain by less
// than 0.01 (one standard deviation).
const sampleSize = 400_000

// TestSumOfFour draws the additive model of JCGM 101:2008, 9.2: the sum of four
// quantities, with the figures given there, re-simulated since.
func TestSumOfFour(t *testing.T) {
	normal, uniform := optimize.Distribution{Spread: 1}, optimize.Distribution{Shape: optimize.Uniform, Spread: math.Sqrt(3)}
	wide := optimize.Distribution{Shape: optimize.Uniform, Spread: 10 * math.Sqrt(3)}
	for _, tt := range []struct {
		source string
		inputs [4]optimize.Distribution
		u, end float64 // standard uncertainty; half of the 95 % interval
		tol    float64
	}{
		{"9.2.2, normal", [4]optimize.Distribution{normal, normal, normal, normal}, 2, 3.92, 0.03},
		{"9.2.3, rectangular; half width 2√3(2-(3/5)^¼)", [4]optimize.Distribution{uniform, uniform, uniform, uniform}, 2, 2 * math.Sqrt(3) * (2 - math.Pow(0.6, 0.25)), 0.03},
		{"9.2.4, one ten times as wide", [4]optimize.Distribution{uniform, uniform, uniform, wide}, 10.149, 17, 0.1},
	} {
		t.Run(tt.source, func(t *testing.T) {
			r := rand.New(rand.NewPCG(1, 2))
			sums := make([]float64, sampleSize)
			squares, variance := 0.0, 0.0
			for i := range sums {
				for _, d := range tt.inputs {
					sums[i] += d.Draw(r)
				}
				squares += sums[i] * sums[i]
			}
			for _, d := range tt.inputs {
				variance += d.SD() * d.SD()
			}
			if u := math.Sqrt(variance); !(math.Abs(u-tt.u) <= 5e-4) {
				t.Errorf("linear u = %.4f, want %.4f", u, tt.u)
			}
			if u := math.Sqrt(squares / sampleSize); !(math.Abs(u-tt.u) <= tt.tol) {
				t.Errorf("sampled u = %.4f, want %.4f", u, tt.u)
			}
			q := optimize.Quantiles(sums, 0.025, 0.975)
			for i, want := range []float64{-tt.end, tt.end} {
				if !(math.Abs(q[i]-want) <= tt.tol) {
					t.Errorf("interval end %.4f, want %.4f", q[i], want)
				}
			}
		})
	}
}

func TestTriangularSD(t *testing.T) {
	d := optimize.Distribution{Shape: optimize.Triangular, Spread: 3}
	r := rand.New(rand.NewPCG(5, 6))
	sum := 0.0
	for range sampleSize {
		x := d.Draw(r)
		sum += x * x
	}
	if got := math.Sqrt(sum / sampleSize); !(math.Abs(got-d.SD()) <= 0.01) {
		t.Errorf("sampled %.4f, stated %.4f", got, d.SD())
	}
}

func ExampleQuantiles() {
	fmt.Println(optimize.Quantiles([]float64{5, 1, 3, 2, 4}, 0, 0.5, 0.9))
	// Output: [1 3 4.6]
}
