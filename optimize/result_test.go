package optimize

import (
	"reflect"
	"slices"
	"testing"
)

func TestBetter(t *testing.T) {
	held, worse := local{value: 1}, local{value: 2}
	near, far := local{broken: true, violation: 1, value: 0}, local{broken: true, violation: 2, value: 0}
	want := []local{held, worse, near, far}
	got := []local{far, near, worse, held}
	slices.SortStableFunc(got, better)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("sorted = %v, want %v", got, want)
	}
	for _, l := range want {
		if c := better(l, l); c != 0 {
			t.Errorf("better(%v, itself) = %d, want 0", l, c)
		}
	}
}

func TestSummarise(t *testing.T) {
	p := &Problem{Variables: []Variable{{"x", 0, 100}}, Start: []float64{80}}
	at := func(u, value float64, s Status) local { return local{u: []float64{u}, value: value, status: s} }
	tests := []struct {
		name     string
		found    []local
		x        float64
		agreeing int
		searches int
		optima   []float64
	}{
		{"none", nil, 0, 0, 0, nil},
		{"one optimum, many times", []local{at(0.3, 5, Converged), at(0.301, 5.000001, Converged)}, 30, 2, 2, []float64{30}},
		{"the better of two", []local{at(0.3, 5, Converged), at(0.9, 4, Converged)}, 90, 1, 2, []float64{90, 30}},
		// Rounding apart: the one nearest to the start at 80.
		{"two as good", []local{at(0.1, 4, Converged), at(0.9, 4+1e-12, Converged), at(0.5, 4, Converged)}, 90, 3, 3, []float64{90, 10, 50}},
		{"cut off", []local{at(0.3, 5, Converged), at(0.9, 4, Cancelled)}, 90, 0, 1, []float64{30}},
		{"all cut off", []local{at(0.9, 4, EvaluationLimit)}, 90, 0, 0, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var r Result
			r.summarise(tt.found, p, 10)
			var optima []float64
			for _, o := range r.Optima {
				optima = append(optima, o.X[0])
			}
			if len(tt.found) > 0 && !near(r.X[0], tt.x, 1e-9) {
				t.Errorf("X = %v, want %g", r.X, tt.x)
			}
			if r.Agreeing != tt.agreeing || r.Searches != tt.searches || !nearAll(optima, tt.optima, 1e-9) {
				t.Errorf("Agreeing, Searches, Optima = %d, %d, %v, want %d, %d, %v", r.Agreeing, r.Searches, optima, tt.agreeing, tt.searches, tt.optima)
			}
		})
	}
}
