package plot

import (
	"math"
	"testing"
)

func TestAppendSmoothStraight(t *testing.T) {
	f := NewFrame(Box(0, 0, 90, 90), Domain{0, 9}, Domain{0, 9})
	tests := []struct {
		name   string
		xs, ys []float64
		want   string
	}{
		{"even", []float64{0, 3, 6}, []float64{0, 3, 6}, "M0 90C10 80 20 70 30 60C40 50 50 40 60 30"},
		{"twice the same", []float64{0, 3, 3}, []float64{0, 3, 3}, "M0 90C10 80 20 70 30 60L30 60"},
		{"gap", []float64{0, 3, nan, 6}, []float64{0, 3, 3, 6}, "M0 90C10 80 20 70 30 60"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := f.AppendSmooth(nil, tt.xs, tt.ys).String(); got != tt.want {
				t.Errorf("AppendSmooth = %q, want %q", got, tt.want)
			}
		})
	}
}

// On a circle the curve must stay close to the circle, all the way round.
func TestAppendSmoothFollowsACircle(t *testing.T) {
	f := NewFrame(Box(0, 0, 200, 200), Domain{-1, 1}, Domain{-1, 1})
	const n = 16
	xs, ys := make([]float64, n+1), make([]float64, n+1)
	for i := range xs {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		xs[i], ys[i] = 0.9*cos, 0.9*sin
	}
	// In px. Straight lines would pass 1.7 inside; the two spans at the free ends know
	// only one neighbour.
	const radius, inner, end = 90, 0.1, 1.0
	from := Point{}
	for i, c := range parse(t, f.AppendSmooth(nil, xs, ys)) {
		if c.name == 'C' {
			middle := bezier(from, Point{c.numbers[0], c.numbers[1]}, Point{c.numbers[2], c.numbers[3]}, c.end(), 0.5)
			tolerance := inner
			if i == 1 || i == n {
				tolerance = end
			}
			if got := middle.Sub(Point{100, 100}).Length(); !near(got, radius, tolerance) {
				t.Errorf("the curve passes %v at %.2f from the centre, want %d", middle, got, radius)
			}
		}
		from = c.end()
	}
}
