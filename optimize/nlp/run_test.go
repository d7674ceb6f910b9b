package nlp

import (
	"context"
	"math"
	"reflect"
	"testing"
)

// search runs a search and fails the test on an error.
func search(t *testing.T, p Problem, s *Settings) Result {
	t.Helper()
	r, err := Run(context.Background(), p, s)
	if err != nil {
		t.Fatalf("Run() error: %v", err)
	}
	return r
}

func TestRunGlobal(t *testing.T) {
	camel := math.Sqrt(camelFloor - 1.0316284534898774)
	tests := []struct {
		name      string
		p         Problem
		value     float64
		x         [][]float64 // the places with this value
		optima    int         // least number of distinct optima found; 0 for no claim
		allAgree  bool
		tolerance float64 // of x
	}{
		{"rosenbrock", Problem{Model: rosenbrock(), Variables: square(2, -2, 2)}, 0, [][]float64{{1, 1}}, 1, true, 1e-6},
		{"branin", Problem{Model: branin(), Variables: []Variable{{"x", -5, 10}, {"y", 0, 15}}},
			math.Sqrt(5 / (8 * math.Pi)), [][]float64{{-math.Pi, 12.275}, {math.Pi, 2.275}, {3 * math.Pi, 2.475}}, 3, true, 1e-4},
		{"six-hump camel", Problem{Model: sixHumpCamel(), Variables: []Variable{{"x", -3, 3}, {"y", -2, 2}}},
			camel, [][]float64{{0.0898420131, -0.7126564030}, {-0.0898420131, 0.7126564030}}, 6, false, 1e-5},
		{"six-hump camel, peak", Problem{Model: sixHumpCamel(), Variables: []Variable{{"x", -3, 3}, {"y", -2, 2}}, Objective: Objective{Measure: Peak}},
			camel, [][]float64{{0.0898420131, -0.7126564030}, {-0.0898420131, 0.7126564030}}, 6, false, 1e-5},
		{"rastrigin", Problem{Model: rastrigin(2), Variables: square(2, -5.12, 4.12)}, 0, [][]float64{{0, 0}}, 5, false, 1e-6},
		{"Chebyshev's line", Problem{Model: polynomialFit(samples(-1, 1, 201), 2, cube), Variables: square(2, -3, 3), Objective: Objective{Measure: Peak}},
			0.25, [][]float64{{0, 0.75}}, 1, true, 1e-8},
		{"bounds", Problem{Model: distanceTo(9, -9, 0), Variables: square(3, -1, 1)}, math.Sqrt(128.0 / 3), [][]float64{{1, -1, 0}}, 1, true, 0},
		{"one variable", Problem{Model: worstOfTwo(), Variables: square(1, -5, 5), Objective: Objective{Measure: Peak}}, 1, [][]float64{{0}}, 1, true, 1e-8},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := search(t, tt.p, &Settings{Seed: 1})
			if r.Status != Converged {
				t.Errorf("Status = %v, want converged", r.Status)
			}
			if !near(r.Value, tt.value, 1e-10*math.Max(1, tt.value)) {
				t.Errorf("Value = %.15g, want %.15g", r.Value, tt.value)
			}
			if !atOneOf(r.X, tt.x, math.Max(tt.tolerance, 1e-9)) {
				t.Errorf("X = %.12g, want one of %.12g", r.X, tt.x)
			}
			if len(r.Optima) < tt.optima || r.Agreeing < 1 || tt.allAgree && r.Agreeing != r.Searches {
				t.Errorf("%d of %d agree, %d optima, want at least %d optima", r.Agreeing, r.Searches, len(r.Optima), tt.optima)
			}
		})
	}
}

// atOneOf reports whether x is one of the places.
func atOneOf(x []float64, places [][]float64, tol float64) bool {
	for _, p := range places {
		if nearAll(x, p, tol) {
			return true
		}
	}
	return false
}

// TestRunRepeats checks that the seed, and nothing else, decides the result.
func TestRunRepeats(t *testing.T) {
	p := Problem{Model: withLimits(sixHumpCamel(), 1, disc(0.4)), Variables: []Variable{{"x", -3, 3}, {"y", -2, 2}}}
	first := search(t, p, &Settings{Seed: 3})
	if second := search(t, p, &Settings{Seed: 3}); !reflect.DeepEqual(first, second) {
		t.Errorf("the same seed gave %+v, then %+v", first, second)
	}
	other := search(t, p, &Settings{Seed: 4})
	if reflect.DeepEqual(first, other) {
		t.Error("another seed gave the same restarts")
	}
	if !near(other.Value, first.Value, 1e-9) {
		t.Errorf("another seed gave value %.12g, want %.12g", other.Value, first.Value)
	}
}

// TestRunKeepsInput checks that the problem is not modified.
func TestRunKeepsInput(t *testing.T) {
	p := Problem{
		Model: rosenbrock(), Variables: square(2, -2, 2), Start: []float64{7, -7},
		Objective: Objective{Weights: []float64{2, 6}, Groups: []Group{{1, 3, 0}, {1, 5, 0}}},
	}
	search(t, p, &Settings{Restarts: 2})
	if !reflect.DeepEqual(p.Start, []float64{7, -7}) || !reflect.DeepEqual(p.Variables, square(2, -2, 2)) ||
		!reflect.DeepEqual(p.Objective, Objective{Weights: []float64{2, 6}, Groups: []Group{{1, 3, 0}, {1, 5, 0}}}) {
		t.Errorf("Run() changed its input to %+v", p)
	}
}

func TestRunStart(t *testing.T) {
	p := Problem{Model: distanceTo(1), Variables: square(1, -5, 5), Start: []float64{4}}
	if r := search(t, p, nil); !near(r.Start, 3, 1e-14) || !near(r.Value, 0, 1e-12) {
		t.Errorf("Start, Value = %g, %g, want 3, 0", r.Start, r.Value)
	}
	beyond := Problem{Model: halfLine(), Variables: []Variable{{"x", -100, 100}}, Start: []float64{-50}}
	if r := search(t, beyond, nil); !math.IsNaN(r.Start) || !near(r.Value, 0, 1e-10) || r.Status != Converged {
		t.Errorf("Start, Value = %g, %g (%v), want NaN and 0, converged", r.Start, r.Value, r.Status)
	}
}

func TestRunLimits(t *testing.T) {
	// The point of the disc x² + y² <= 1/2 nearest to (3, 3).
	cut := withLimits(distanceTo(3, 3), 1, disc(0.5))
	r := search(t, Problem{Model: cut, Variables: square(2, -2, 2)}, nil)
	if r.Status != Converged || !nearAll(r.X, []float64{0.5, 0.5}, 1e-7) || !(r.Violation <= 1e-9) {
		t.Errorf("X = %v, violation %g (%v), want (0.5, 0.5) within the limit", r.X, r.Violation, r.Status)
	}
	never := withLimits(distanceTo(3, 3), 1, disc(-0.5))
	r = search(t, Problem{Model: never, Variables: square(2, -2, 2)}, nil)
	if r.Status != Infeasible || !near(r.Violation, 0.5, 1e-6) {
		t.Errorf("Status, Violation = %v, %g, want infeasible by 0.5", r.Status, r.Violation)
	}
}

func TestRunNotEvaluable(t *testing.T) {
	none := functionModel{Size{1, 1, 0}, func([]float64, *Values) bool { return false }}
	r := search(t, Problem{Model: none, Variables: square(1, 0, 1)}, nil)
	if r.Status != NotEvaluable || r.X != nil || !math.IsNaN(r.Start) {
		t.Errorf("Status, X, Start = %v, %v, %g, want not evaluable, nil, NaN", r.Status, r.X, r.Start)
	}
}

// TestRunCancel cancels after some evaluations and wants the best so far.
func TestRunCancel(t *testing.T) {
	for _, after := range []int{0, 1, 5, 100, 300} {
		ctx, cancel := context.WithCancel(context.Background())
		if after == 0 {
			cancel()
		}
		s := &Settings{Progress: func(p Progress) {
			if p.Evaluations >= after {
				cancel()
			}
		}}
		r, err := Run(ctx, Problem{Model: branin(), Variables: []Variable{{"x", -5, 10}, {"y", 0, 15}}}, s)
		cancel()
		if err != nil || r.Status != Cancelled {
			t.Errorf("after %d: Status = %v (%v), want cancelled", after, r.Status, err)
		}
		if r.Evaluations > after+1 {
			t.Errorf("after %d: %d evaluations, want no more than one beyond", after, r.Evaluations)
		}
		if after > 0 && (len(r.X) != 2 || !(r.Value <= r.Start)) {
			t.Errorf("after %d: X = %v with value %g, want the best so far, from %g", after, r.X, r.Value, r.Start)
		}
	}
}

func TestRunBudget(t *testing.T) {
	p := Problem{Model: sixHumpCamel(), Variables: []Variable{{"x", -3, 3}, {"y", -2, 2}}, Start: []float64{1, 1}}
	for _, budget := range []int{1, 7, 60, 250} {
		r := search(t, p, &Settings{Evaluations: budget})
		if r.Status != EvaluationLimit || r.Evaluations != budget {
			t.Errorf("budget %d: Status = %v after %d, want evaluation limit at the budget", budget, r.Status, r.Evaluations)
		}
		if !(r.Value <= r.Start) {
			t.Errorf("budget %d: Value = %g, want at most the start's %g", budget, r.Value, r.Start)
		}
	}
}

// TestRunProgress checks that what is told only improves and ends near 1.
func TestRunProgress(t *testing.T) {
	last := Progress{Best: math.Inf(1)}
	s := &Settings{Progress: func(p Progress) {
		if p.Evaluations < last.Evaluations || p.Best > last.Best || p.Fraction < last.Fraction || p.Fraction > 1 {
			t.Errorf("progress went from %+v to %+v", last, p)
		}
		last = p
	}}
	r := search(t, Problem{Model: branin(), Variables: []Variable{{"x", -5, 10}, {"y", 0, 15}}}, s)
	if !(last.Fraction > 0.9) || !near(last.Best, r.Value, 1e-6) {
		t.Errorf("last progress = %+v, want nearly done with %g", last, r.Value)
	}
}

func BenchmarkRun(b *testing.B) {
	for _, measure := range []Measure{RMS, Peak} {
		b.Run(measure.String(), func(b *testing.B) {
			p := Problem{Model: rationalFit(samples(-1, 1, 21)), Variables: square(3, -3, 3), Objective: Objective{Measure: measure}}
			b.ReportAllocs()
			evaluations, seed := 0, uint64(0)
			for b.Loop() {
				seed++
				r, err := Run(context.Background(), p, &Settings{Seed: seed})
				if err != nil || r.Status != Converged {
					b.Fatal(r.Status, err)
				}
				evaluations += r.Evaluations
			}
			b.ReportMetric(float64(evaluations)/float64(b.N), "evaluations/op")
		})
	}
}
