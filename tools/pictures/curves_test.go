package main

import (
	"context"
	"math"
	"testing"
)

// curvesOf returns the curves of the picture of a name.
func curvesOf(t *testing.T, name string) []curve {
	t.Helper()
	doc := demo()
	for _, p := range pictures {
		if p.name == name {
			curves, err := p.curves(context.Background(), doc)
			if err != nil {
				t.Fatal(err)
			}
			return curves
		}
	}
	t.Fatalf("there is no picture %s", name)
	return nil
}

// The theory says of this picture that the slope grows without bound at the lock.
func TestToeGrowsSteepTowardsTheLock(t *testing.T) {
	c := curvesOf(t, "theory-lock")[0]
	n := len(c.travels)
	if c.travels[0] <= -far || c.travels[n-1] >= far {
		t.Fatalf("the car goes from %g to %g mm without a lock", c.travels[0], c.travels[n-1])
	}
	slope := func(i int) float64 {
		return math.Abs((c.across[i+1] - c.across[i]) / (c.travels[i+1] - c.travels[i]))
	}
	for _, end := range [][2]int{{0, 5}, {n - 2, n - 7}} {
		if !(slope(end[0]) > 2*slope(end[1])) {
			t.Errorf("slope %g at the end, %g five steps before", slope(end[0]), slope(end[1]))
		}
	}
}

// The theory says of this one that the two heights mirror each other.
func TestHeightsOfBothBallsActAgainstEachOther(t *testing.T) {
	c := curvesOf(t, "theory-rates")
	for i, outer := range c[0].across {
		if sum := outer + c[1].across[i]; math.Abs(sum) > 0.25*math.Max(math.Abs(outer), 1e-3) {
			t.Errorf("at %g mm: %g and %g deg/mm", c[0].travels[i], outer, c[1].across[i])
		}
	}
}

func TestEachMeasureIsLeastWhereItWasSought(t *testing.T) {
	c := curvesOf(t, "theory-search")
	square, peak := [2]float64{}, [2]float64{}
	for k := range c {
		for _, x := range c[k].across {
			square[k] += x * x
			peak[k] = math.Max(peak[k], math.Abs(x))
		}
	}
	if !(square[0] < square[1] && peak[1] < peak[0]) {
		t.Errorf("squares %g, peaks %g", square, peak)
	}
}
