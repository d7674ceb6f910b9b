package plot

import (
	"math"
	"testing"
)

func TestPoint(t *testing.T) {
	p, q := Point{3, 4}, Point{1, -2}
	tests := []struct {
		name      string
		got, want Point
	}{
		{"add", p.Add(q), Point{4, 2}},
		{"sub", p.Sub(q), Point{2, 6}},
		{"times", p.Times(-2), Point{-6, -8}},
		{"unit", p.Unit(), Point{0.6, 0.8}},
		{"unit of nothing", Point{}.Unit(), Point{1, 0}},
		{"across turns right to down", Point{1, 0}.Across(), Point{0, 1}},
		{"towards, begin", p.Towards(q, 0), p},
		{"towards, end", p.Towards(q, 1), q},
		{"towards, middle", p.Towards(q, 0.5), Point{2, 1}},
	}
	const tolerance = 1e-15 // one rounding
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if !nearPoint(tt.got, tt.want, tolerance) {
				t.Errorf("got %v, want %v", tt.got, tt.want)
			}
		})
	}
	if got := (Point{0, 5}).Angle(); got != 90 {
		t.Errorf("down has the angle %v, want 90", got)
	}
	if (Point{math.NaN(), 0}).finite() || (Point{0, math.Inf(-1)}).finite() || !p.finite() {
		t.Errorf("finite does not tell gaps from points")
	}
}
