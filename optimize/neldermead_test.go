package optimize

import (
	"context"
	"math"
	"testing"
)

// valley is Rosenbrock's, curved, with its minimum, 0, at (1, 1).
func valley(x []float64) float64 {
	return 100*math.Pow(x[1]-x[0]*x[0], 2) + math.Pow(1-x[0], 2)
}

func TestSimplexFindsMinima(t *testing.T) {
	tests := []struct {
		name  string
		value func([]float64) float64
		start []float64
		want  []float64
	}{
		{"parabola", func(x []float64) float64 { return math.Pow(x[0]-3, 2) }, []float64{0}, []float64{3}},
		{"valley", valley, []float64{-1.2, 1}, []float64{1, 1}},
		{"kink", func(x []float64) float64 { return math.Abs(x[0]-1) + 2*math.Abs(x[1]+x[0]) }, []float64{0, 0}, []float64{1, -1}},
		{"wall of NaN", func(x []float64) float64 { return x[0] - math.Log(x[0]) + x[1]*x[1] }, []float64{0.05, 0.3}, []float64{1, 0}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := newSimplex(tt.value, tt.start, 0.1, 2000)
			for s.left > 0 {
				s.step()
			}
			for j, x := range s.best().x {
				if !near(x, tt.want[j], 1e-5) {
					t.Errorf("x[%d] = %g, want %g", j, x, tt.want[j])
				}
			}
			if got := tt.value(s.best().x); got != s.best().value {
				t.Errorf("the best has the value %g, said to be %g", got, s.best().value)
			}
		})
	}
}

// TestSimplexCorners checks after every step that corners ascend and that the best
// never gets worse.
func TestSimplexCorners(t *testing.T) {
	s := newSimplex(valley, []float64{-1.2, 1}, 0.1, 300)
	for s.left > 0 {
		before := s.best().value
		s.step()
		if !(s.best().value <= before) {
			t.Fatalf("the best went from %g to %g", before, s.best().value)
		}
		if len(s.corners) != 3 || !(s.corners[0].value <= s.corners[1].value && s.corners[1].value <= s.corners[2].value) {
			t.Fatalf("corners %v, want three that ascend", s.corners)
		}
	}
}

func TestSimplexStartsWithItsCorners(t *testing.T) {
	count := 0
	s := newSimplex(func(x []float64) float64 { count++; return x[0] + 2*x[1] }, []float64{1, 1}, 0.5, 10)
	if count != 3 || s.left != 7 {
		t.Errorf("%d evaluations, %d left, want 3 and 7", count, s.left)
	}
	if got := s.best().value; got != 3 {
		t.Errorf("best value %g, want that of the start, 3", got)
	}
	if got := s.corners[2].x[1]; got != 1.5 {
		t.Errorf("the corner along y is at %g, want 1.5", got)
	}
}

func TestSimplexRunEnds(t *testing.T) {
	ended, end := context.WithCancel(context.Background())
	end()
	flat := func([]float64) float64 { return 1 }
	for _, tt := range []struct {
		name  string
		ctx   context.Context
		value func([]float64) float64
		most  int // evaluations, of 500
	}{
		{"cancelled", ended, valley, 3},
		{"nothing to gain", context.Background(), flat, 3 + simplexPatience*5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := newSimplex(tt.value, []float64{-1.2, 1}, 0.1, 500)
			s.run(tt.ctx, 1e-4)
			if spent := 500 - s.left; spent > tt.most {
				t.Errorf("%d evaluations, want at most %d", spent, tt.most)
			}
		})
	}
	s := newSimplex(valley, []float64{-1.2, 1}, 0.1, 500)
	if s.run(context.Background(), 1e-4); !(s.best().value <= 1e-3) {
		t.Errorf("the valley was left at %g", s.best().value)
	}
}
