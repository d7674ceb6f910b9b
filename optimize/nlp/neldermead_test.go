package nlp

import (
	"context"
	"math"
	"testing"
)

// valley is Rosenbrock's, curved, with its minimum, 0, at (1, 1).
func valley(x []float64) float64 {
	return 100*math.Pow(x[1]-x[0]*x[0], 2) + math.Pow(1-x[0], 2)
}

func TestDescentFindsMinima(t *testing.T) {
	beyond := func(x []float64) float64 { // no value below 1
		if x[0] < 1 {
			return math.NaN()
		}
		return x[0] * x[0]
	}
	kink := func(x []float64) float64 { return math.Abs(x[0]-2) + 2*math.Abs(x[1]+1) }
	for _, tt := range []struct {
		name        string
		value       func([]float64) float64
		start, want []float64
	}{
		{"parabola", func(x []float64) float64 { return math.Pow(x[0]-3, 2) }, []float64{0}, []float64{3}},
		{"valley", valley, []float64{-1.2, 1}, []float64{1, 1}},
		{"kinks", kink, []float64{0, 0}, []float64{2, -1}},
		{"an edge without values", beyond, []float64{4}, []float64{1}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := NelderMead{Value: tt.value, Edge: 0.1, Evaluations: 500, Gain: 1e-9}
			x, v := d.Run(context.Background(), tt.start)
			if !nearAll(x, tt.want, 1e-2) || v != tt.value(x) {
				t.Errorf("run() = %v, %g, want %v and its value", x, v, tt.want)
			}
		})
	}
}

func TestDescentEnds(t *testing.T) {
	ended, end := context.WithCancel(context.Background())
	end()
	never := func([]float64) float64 { return math.NaN() }
	flat := func([]float64) float64 { return 1 }
	for _, tt := range []struct {
		name  string
		ctx   context.Context
		value func([]float64) float64
		most  int // evaluations, of 500
	}{
		{"cancelled", ended, valley, 4},
		{"nothing to gain", context.Background(), flat, 3 + nelderMeadPatience*5},
		{"no value at the start", context.Background(), never, 4},
	} {
		t.Run(tt.name, func(t *testing.T) {
			count := 0
			d := NelderMead{Value: func(x []float64) float64 { count++; return tt.value(x) }, Edge: 0.1, Evaluations: 500, Gain: 1e-4}
			x, v := d.Run(tt.ctx, []float64{-1.2, 1})
			if count > tt.most {
				t.Errorf("%d evaluations, want at most %d", count, tt.most)
			}
			if !(v <= tt.value(x)) && !math.IsInf(v, 1) {
				t.Errorf("run() = %v, %g, want its value %g", x, v, tt.value(x))
			}
		})
	}
}

// TestDescentNeverWorse checks that what is given back is no worse than the start, and
// no more is asked than allowed.
func TestDescentNeverWorse(t *testing.T) {
	for most := 1; most < 60; most++ {
		count := 0
		d := NelderMead{Value: func(x []float64) float64 { count++; return valley(x) }, Edge: 0.1, Evaluations: most, Gain: 1e-9}
		start := []float64{-1.2, 1}
		if _, v := d.Run(context.Background(), start); !(v <= valley(start)) || count > most+1 {
			t.Errorf("%d evaluations allowed: %g after %d, want at most the start's %g", most, v, count, valley(start))
		}
	}
}
