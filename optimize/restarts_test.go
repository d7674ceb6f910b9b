package optimize

import (
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestSpread checks that the points are in the box, spread evenly, and follow
// from the seed.
func TestSpread(t *testing.T) {
	const count, variables = 64, 3
	points := spread(count, variables, 1)
	for j := range variables {
		var halves [2]int
		for i := range count {
			u := points.At(i, j)
			if !(u >= 0 && u <= 1) {
				t.Fatalf("point %d has %g, want it in the unit box", i, u)
			}
			halves[min(int(2*u), 1)]++
		}
		// A Halton sequence is out of balance by no more than its base, 5 here.
		if diff := halves[0] - halves[1]; diff > 5 || diff < -5 {
			t.Errorf("variable %d: %v points in the two halves, want about the same", j, halves)
		}
	}
	if !mat.Equal(points, spread(count, variables, 1)) {
		t.Error("the same seed gave other points")
	}
	if mat.Equal(points, spread(count, variables, 2)) {
		t.Error("another seed gave the same points")
	}
}
