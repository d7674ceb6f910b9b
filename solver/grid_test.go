package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// wantGrid checks that list is what a window's grid is: ascending, from exactly -droop
// to exactly bump, with 0 and every multiple of step between, and nothing else.
func wantGrid(t *testing.T, list []float64, bump, droop, step float64) {
	t.Helper()
	if len(list) == 0 || list[0] != -droop && droop != 0 || list[len(list)-1] != bump {
		t.Fatalf("%g to %g by %g: grid %v, want both ends", droop, bump, step, list)
	}
	zero := false
	for i, x := range list {
		zero = zero || x == 0
		if i > 0 && !(x > list[i-1] && x-list[i-1] <= step*(1+1e-9)) {
			t.Errorf("%g to %g by %g: %g follows %g", droop, bump, step, x, list[i-1])
		}
		k := math.Round(x / step)
		if end := i == 0 || i == len(list)-1; !end && math.Abs(x-k*step) > 1e-9*step {
			t.Errorf("%g to %g by %g: %g is neither a multiple of the step nor an end", droop, bump, step, x)
		}
	}
	if want := 1 + math.Ceil(droop/step-1e-9) + math.Ceil(bump/step-1e-9); !zero || float64(len(list)) != want {
		t.Errorf("%g to %g by %g: %d positions (0 among them: %t), want %g with 0", droop, bump, step, len(list), zero, want)
	}
}

// TestGridEnds: the grid is anchored at 0 and both ends belong to it, whatever the step.
func TestGridEnds(t *testing.T) {
	ends := []float64{0, 0.3, 1, 2.25, 3, 7, 49.9999, 50, 63.5, 80}
	for _, step := range []float64{0.1, 0.25, 0.7, 3, 5, 12.7, 40, 50, 1000} {
		for _, bump := range ends {
			for _, droop := range ends {
				if bump+droop == 0 {
					continue
				}
				list, err := solver.Grid(bump, droop, step)
				if err != nil {
					t.Fatal(err)
				}
				wantGrid(t, list, bump, droop, step)
			}
		}
	}
}
