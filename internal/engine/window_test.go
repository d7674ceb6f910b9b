package engine

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"

	"toewright/internal/study"
)

// TestWindowEnds: whatever the step, both ends of the window and the static height are
// among the positions that every call looks at, in both units.
func TestWindowEnds(t *testing.T) {
	for _, w := range []study.Travel{{Bump: 50, Droop: 50, Step: 40}, {Bump: 3, Droop: 3, Step: 50}, {Bump: 40, Droop: 33, Step: 7}, {Bump: 25.4, Step: 9}, {Droop: 38, Step: 12}} {
		for _, inch := range []bool{false, true} {
			t.Run(fmt.Sprintf("%g to %g by %g, inches %t", w.Droop, w.Bump, w.Step, inch), func(t *testing.T) {
				d := document(t, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -10, "max": 10}]},`)
				d.Travel = &w
				if inch {
					d = inInches(d)
				}
				testWindowEnds(t, d)
			})
		}
	}
}

func testWindowEnds(t *testing.T, d *study.Document) {
	ctx, w := context.Background(), d.Window()
	swept, err := Sweep(ctx, d, SweepOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	var peak [2]float64
	for s, sweep := range swept.Sweeps {
		var at []float64
		zero := math.NaN()
		for _, p := range sweep.Positions {
			at = append(at, p.Travel)
			if p.Travel == 0 {
				zero = p.Toe
			}
		}
		if at[0] != -w.Droop || at[len(at)-1] != w.Bump || !slices.Contains(at, 0) {
			t.Errorf("%s: swept at %v, want both ends and 0", sweep.Side, at)
		}
		for _, p := range sweep.Positions {
			peak[s] = math.Max(peak[s], math.Abs(p.Toe-zero))
		}
	}
	want := math.Max(peak[0], peak[1])
	compared, err := Compare(ctx, d, CompareOptions{})
	if err != nil {
		t.Fatal(err)
	}
	found, err := Search(ctx, d, SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for what, got := range map[string]float64{"compare": float64(compared.Cars[0].Peak), "search": float64(found.Start.Peak)} {
		if !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("%s: peak %.9f deg, want %.9f as the sweep has it", what, got, want)
		}
	}
}

// inInches returns the study with its numbers taken for inches: the same car, 25.4 times
// as large.
func inInches(d *study.Document) *study.Document {
	out := d.Clone()
	out.Units = study.Inch
	return out
}
