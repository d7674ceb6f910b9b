package optimize_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"toewright/optimize"
	"toewright/optimize/nlp"
)

// sampleSize makes the interval ends of a sum of four quantities of standard
// deviation 1 uncertain by less than 0.01 (one standard deviation).
const sampleSize = 400_000

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
	fmt.Println(nlp.Quantiles([]float64{5, 1, 3, 2, 4}, 0, 0.5, 0.9))
	// Output: [1 3 4.6]
}
