package nlp

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"
)

func TestReferenceDerivatives(t *testing.T) {
	for _, tt := range references {
		t.Run(tt.name, func(t *testing.T) {
			checkJacobians(t, tt.model(), tt.x, tt.x)
		})
	}
}

// fit runs LeastSquares and fails the test on an error.
func fit(t *testing.T, r Readings) Estimate {
	t.Helper()
	e, err := LeastSquares(context.Background(), r, nil)
	if err != nil {
		t.Fatalf("LeastSquares() error: %v", err)
	}
	return e
}

// constant is a model of n readings of one number x, each with deviation sd.
func constant(readings []float64, sd float64) Model {
	return functionModel{Size{1, len(readings), 0}, func(x []float64, v *Values) bool {
		for i, y := range readings {
			v.R[i] = (x[0] - y) / sd
			setRow(v.JR, i, 1/sd)
		}
		return true
	}}
}

func TestPriors(t *testing.T) {
	// Precision 4/0.5² from the readings and 1/1² from the prior: 16 and 1.
	model := constant([]float64{1, 2, 3, 2}, 0.5)
	tests := []struct {
		name          string
		priors        []Prior
		x, sd         float64
		chi           float64
		freedom, rank int
	}{
		{"none", nil, 2, 0.25, 8, 3, 1},
		{"zero is none", []Prior{{}}, 2, 0.25, 8, 3, 1},
		{"weighs by precision", []Prior{{Mean: 19, SD: 1}}, 3, 1 / math.Sqrt(17), 8 + 16 + 256, 4, 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			const tol = 1e-11
			e := fit(t, Readings{Model: model, Start: []float64{0}, Priors: tt.priors})
			if !near(e.X[0], tt.x, tol) || !near(math.Sqrt(e.Covariance.At(0, 0)), tt.sd, tol) {
				t.Errorf("X = %.12g ± %.12g, want %.12g ± %.12g", e.X[0], math.Sqrt(e.Covariance.At(0, 0)), tt.x, tt.sd)
			}
			if !near(e.ChiSquare, tt.chi, 1e-9) || e.Freedom != tt.freedom || e.Rank != tt.rank {
				t.Errorf("ChiSquare, Freedom, Rank = %g, %d, %d, want %g, %d, %d", e.ChiSquare, e.Freedom, e.Rank, tt.chi, tt.freedom, tt.rank)
			}
		})
	}
}

// TestLeverageSum checks that leverages add up to the number of parameters.
func TestLeverageSum(t *testing.T) {
	for _, tt := range references {
		e := fit(t, Readings{Model: tt.model(), Start: tt.x})
		sum := 0.0
		for _, h := range e.Leverage {
			sum += h
		}
		if !near(sum, float64(len(tt.x)), 1e-10) {
			t.Errorf("%s: leverages sum to %.12g, want %d", tt.name, sum, len(tt.x))
		}
	}
}

func TestRobustLosses(t *testing.T) {
	// Nine good readings of 10 and one of 1000, in units of their deviation.
	readings := []float64{9, 9.5, 9.8, 10, 10, 10, 10.2, 10.5, 11, 1000}
	tests := []struct {
		name string
		loss Loss
		want float64
		tol  float64
	}{
		// The mean: pulled to 109.
		{"squares", Squares{}, 109, 1e-9},
		// Nine in the square part and one pulling with 1.345: 9(x-10) = 1.345.
		{"huber", Huber{}, 10 + 1.345/9, 1e-9},
		{"huber of 2", Huber{K: 2}, 10 + 2.0/9, 1e-9},
		{"student", StudentT{}, 10, 0.01},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			e := fit(t, Readings{Model: constant(readings, 1), Start: []float64{12}, Loss: tt.loss})
			if e.Status != Converged || !near(e.X[0], tt.want, tt.tol) {
				t.Errorf("X = %.12g (%v), want %.12g", e.X[0], e.Status, tt.want)
			}
			if !(e.Cost <= e.ChiSquare*(1+1e-12)) {
				t.Errorf("Cost = %g, want no more than ChiSquare %g", e.Cost, e.ChiSquare)
			}
		})
	}
}

func TestLossDerivatives(t *testing.T) {
	for _, loss := range []Loss{Squares{}, Huber{}, Huber{K: 0.5}, StudentT{}, StudentT{Freedom: 1}} {
		for _, z := range []float64{0.1, 1, 1.7, 4, 100} {
			const step = 1e-6
			up, _ := loss.Rho(z * (1 + step))
			down, _ := loss.Rho(z * (1 - step))
			want := (up - down) / (2 * step * z)
			if _, got := loss.Rho(z); !near(got, want, 1e-8*(1+want)) {
				t.Errorf("%T%+v.Rho(%g) weight = %.10g, want %.10g by differences", loss, loss, z, got, want)
			}
		}
	}
}

// TestRankDeficient fits two parameters of which only the sum matters.
func TestRankDeficient(t *testing.T) {
	sum := functionModel{Size{2, 3, 0}, func(x []float64, v *Values) bool {
		for i := range v.R {
			v.R[i] = x[0] + 1000*x[1] - float64(i)
			setRow(v.JR, i, 1, 1000)
		}
		return true
	}}
	e := fit(t, Readings{Model: sum, Start: []float64{0, 0}})
	if e.Status != RankDeficient || e.Rank != 1 || e.Covariance != nil {
		t.Errorf("Status, Rank, Covariance = %v, %d, %v, want rank deficient, 1, nil", e.Status, e.Rank, e.Covariance)
	}
	e = fit(t, Readings{Model: sum, Start: []float64{0, 0}, Priors: []Prior{{SD: 1}, {}}})
	if e.Status != Converged || e.Rank != 2 || e.Covariance == nil {
		t.Errorf("with a prior: Status, Rank = %v, %d, want converged, 2", e.Status, e.Rank)
	}
}

// halfLine is √x - 2, which cannot be evaluated below 0.
func halfLine() Model {
	return functionModel{Size{1, 1, 0}, func(x []float64, v *Values) bool {
		v.R[0] = math.Sqrt(x[0]) - 2 // NaN below 0
		setRow(v.JR, 0, 0.5/math.Sqrt(x[0]))
		return true
	}}
}

func TestLeastSquaresStatus(t *testing.T) {
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	tests := []struct {
		name   string
		ctx    context.Context
		start  float64
		limit  int
		status Status
		x      float64
	}{
		{"converges though the first steps leave the domain", context.Background(), 100, 0, Converged, 4},
		{"not evaluable at the start", context.Background(), -1, 0, NotEvaluable, -1},
		{"cancelled", cancelled, 100, 0, Cancelled, 100},
		{"iterations", context.Background(), 4.5, 1, IterationLimit, 4},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			e, err := LeastSquares(tt.ctx, Readings{Model: halfLine(), Start: []float64{tt.start}}, &LeastSquaresSettings{Iterations: tt.limit})
			if err != nil {
				t.Fatalf("LeastSquares() error: %v", err)
			}
			if e.Status != tt.status || !near(e.X[0], tt.x, 0.1) {
				t.Errorf("Status, X = %v, %v, want %v, %g", e.Status, e.X, tt.status, tt.x)
			}
			if !AllFinite(e.X) || math.IsNaN(e.ChiSquare) {
				t.Errorf("X, ChiSquare = %v, %g, want finite", e.X, e.ChiSquare)
			}
		})
	}
}

func TestReadingsErrors(t *testing.T) {
	model := constant([]float64{1}, 1)
	limited := functionModel{Size{1, 1, 1}, nil}
	tests := []struct {
		name string
		r    Readings
	}{
		{"no model", Readings{Start: []float64{1}}},
		{"no start", Readings{Model: model}},
		{"start NaN", Readings{Model: model, Start: []float64{math.NaN()}}},
		{"limits", Readings{Model: limited, Start: []float64{1}}},
		{"number of priors", Readings{Model: model, Start: []float64{1}, Priors: make([]Prior, 2)}},
		{"prior negative", Readings{Model: model, Start: []float64{1}, Priors: []Prior{{SD: -1}}}},
		{"prior NaN", Readings{Model: model, Start: []float64{1}, Priors: []Prior{{Mean: math.NaN(), SD: 1}}}},
		{"empty", Readings{Model: functionModel{}, Start: nil}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := LeastSquares(context.Background(), tt.r, nil)
			var want *ProblemError
			if !errors.As(err, &want) {
				t.Errorf("LeastSquares() error = %v, want a *ProblemError", err)
			}
		})
	}
}

func TestLeastSquaresRepeats(t *testing.T) {
	r := references[len(references)-1]
	input := Readings{Model: r.model(), Start: r.starts[0]}
	if first, second := fit(t, input), fit(t, input); !reflect.DeepEqual(first, second) {
		t.Errorf("second fit = %v, want exactly the first, %v", second, first)
	}
}

func TestLeastSquaresProgress(t *testing.T) {
	r := references[2]
	last, calls := math.Inf(1), 0
	_, err := LeastSquares(context.Background(), Readings{Model: r.model(), Start: r.starts[0]}, &LeastSquaresSettings{
		Progress: func(iteration int, cost float64) {
			if iteration != calls || !(cost <= last*(1+fitRounding)) {
				t.Errorf("progress(%d, %g) at call %d after %g, want counted and not rising", iteration, cost, calls, last)
			}
			last = cost
			calls++
		},
	})
	if err != nil || calls == 0 {
		t.Errorf("error %v after %d calls, want none and at least 1", err, calls)
	}
}

func BenchmarkLeastSquares(b *testing.B) {
	r := references[len(references)-1]
	input := Readings{Model: r.model(), Start: r.starts[1]}
	b.ReportAllocs()
	for b.Loop() {
		if e, err := LeastSquares(context.Background(), input, nil); err != nil || e.Status != Converged {
			b.Fatal(e.Status, err)
		}
	}
}
