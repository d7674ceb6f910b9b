package nlp

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
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

// TestStoppedAnywhere: after however many evaluations a run is stopped, its answer
// breaks the limits by no more than its start, and is no worse where that is the same.
func TestStoppedAnywhere(t *testing.T) {
	limits := map[string]float64{"held at the start": 0.5, "broken at the start": 0.1, "held nowhere": -1}
	for name, area := range limits {
		for _, measure := range []Measure{RMS, Peak} {
			for _, start := range [][]float64{{-0.5, -0.45}, {0.6, 0.3}, {-0.2, 0.5}} {
				m := withLimits(rosenbrock(), 1, disc(area))
				p := Problem{Model: m, Variables: square(2, -1, 1), Start: start, Objective: Objective{Measure: measure}}
				began := standingOf(&p, start)
				for k := 1; k < 40; k++ {
					r, err := Run(t.Context(), p, &Settings{Restarts: 2, Evaluations: k})
					if err != nil {
						t.Fatal(err)
					}
					end := standingOf(&p, r.X)
					if end.value *= 1 - 1e-12; better(began, end) < 0 { // rounding
						t.Fatalf("%s, from %v, stopped after %d evaluations: limit broken by %g, value %g; the start %g, %g",
							name, start, k, end.violation, end.value, began.violation, began.value)
					}
				}
			}
		}
	}
}

// standingOf evaluates a point anew.
func standingOf(p *Problem, x []float64) local {
	v := NewValues(p.Model.Size())
	p.Model.Evaluate(x, &v)
	return local{value: p.Objective.Value(v.R), violation: max(0, v.G[0]), broken: true}
}

// TestLimitThatNothingMoves: a limit that is broken alike everywhere keeps no search
// from the least value.
func TestLimitThatNothingMoves(t *testing.T) {
	for _, wobble := range []float64{0, 1e-13} { // rounding
		broken := func(x, g []float64, jac *mat.Dense) {
			g[0] = 3 + wobble*math.Sin(1e6*x[0])
			setRow(jac, 0, 0, 0)
		}
		p := Problem{Model: withLimits(sixHumpCamel(), 1, broken), Variables: square(2, -2, 2), Start: []float64{-1.7, 0.8}}
		r, err := Run(t.Context(), p, nil)
		if err != nil {
			t.Fatal(err)
		}
		want := math.Sqrt(camelFloor - 1.0316284534898774)
		if r.Status != Infeasible || !(math.Abs(r.Value-want) < 1e-5) {
			t.Errorf("%v with value %.9f at %v, want infeasible with %.9f", r.Status, r.Value, r.X, want)
		}
	}
}
