package nlp

import (
	"errors"
	"math"
	"testing"
)

func TestObjectiveValue(t *testing.T) {
	r := []float64{3, -4, 0, 12}
	halves := []Group{{2, 1, 0}, {2, 3, 0}}
	tests := []struct {
		name string
		o    Objective
		want float64
	}{
		{"rms", Objective{}, math.Sqrt(169.0 / 4)},
		{"peak", Objective{Measure: Peak}, 12},
		{"rms with weights", Objective{Weights: []float64{1, 1, 1, 0}}, math.Sqrt(25.0 / 3)},
		{"weights of any size", Objective{Weights: []float64{7, 7, 7, 0}}, math.Sqrt(25.0 / 3)},
		{"peak with weights", Objective{Measure: Peak, Weights: []float64{1, 2, 1, 0.5}}, 8},
		// Mean squares 12.5 and 72 with shares 1/4 and 3/4.
		{"rms, mean of groups", Objective{Groups: halves}, math.Sqrt(12.5/4 + 72*0.75)},
		{"rms, worst group", Objective{Groups: halves, Across: Worst}, math.Sqrt(72)},
		{"peak, mean of groups", Objective{Groups: halves, Measure: Peak}, 4.0/4 + 12*0.75},
		{"peak, worst group", Objective{Groups: halves, Measure: Peak, Across: Worst}, 12},
		{"worse wheel", Objective{Groups: []Group{{4, 1, 2}}}, math.Sqrt(72)},
		{"group of weight 0", Objective{Groups: []Group{{2, 1, 0}, {2, 0, 0}}, Across: Worst}, math.Sqrt(12.5)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.o.Value(r); !near(got, tt.want, 1e-14) {
				t.Errorf("Value(%v) = %.16g, want %.16g", r, got, tt.want)
			}
		})
	}
}

func TestObjectiveErrors(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	tests := []struct {
		name string
		o    Objective
	}{
		{"number of weights", Objective{Weights: []float64{1}}},
		{"weight negative", Objective{Weights: []float64{1, -1}}},
		{"weight NaN", Objective{Weights: []float64{1, nan}}},
		{"weight infinite", Objective{Weights: []float64{1, inf}}},
		{"weights all 0", Objective{Weights: []float64{0, 0}}},
		{"weights of one group all 0", Objective{Weights: []float64{0, 1}, Groups: []Group{{1, 1, 0}, {1, 1, 0}}}},
		{"no groups", Objective{Groups: []Group{}}},
		{"groups too few", Objective{Groups: []Group{{1, 1, 0}}}},
		{"groups too many", Objective{Groups: []Group{{3, 1, 0}}}},
		{"wheels unlike", Objective{Groups: []Group{{2, 1, 3}}}},
		{"group empty", Objective{Groups: []Group{{2, 1, 0}, {0, 1, 0}}}},
		{"group weight NaN", Objective{Groups: []Group{{2, nan, 0}}}},
		{"group weight negative", Objective{Groups: []Group{{1, 1, 0}, {1, -1, 0}}}},
		{"group weights all 0", Objective{Groups: []Group{{2, 0, 0}}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := newScale(&tt.o, 2)
			var want *ProblemError
			if !errors.As(err, &want) {
				t.Errorf("newScale() error = %v, want a *ProblemError", err)
			}
		})
	}
}

func TestObjectiveValuePanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("Value() of an objective for other residuals did not panic")
		}
	}()
	o := Objective{Weights: []float64{1, 1}}
	o.Value([]float64{1})
}

func TestObjectiveNames(t *testing.T) {
	tests := []struct{ got, want string }{
		{RMS.String(), "rms"}, {Peak.String(), "peak"}, {Measure(9).String(), "unknown measure"},
		{Mean.String(), "mean"}, {Worst.String(), "worst"}, {Across(9).String(), "unknown combination"},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("String() = %q, want %q", tt.got, tt.want)
		}
	}
}

// TestObjectiveKeepsWeights checks that normalising leaves the caller's alone.
func TestObjectiveKeepsWeights(t *testing.T) {
	weights := []float64{2, 6}
	if _, err := newScale(&Objective{Weights: weights}, 2); err != nil || weights[0] != 2 || weights[1] != 6 {
		t.Errorf("newScale() left weights %v (%v), want 2 and 6", weights, err)
	}
}
