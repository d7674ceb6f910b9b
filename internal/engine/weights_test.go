package engine

import "testing"

func TestInterpolate(t *testing.T) {
	curve := [][2]float64{{-10, 1}, {0, 3}, {20, 2}}
	tests := []struct{ x, want float64 }{{-50, 1}, {-10, 1}, {-5, 2}, {0, 3}, {10, 2.5}, {20, 2}, {21, 2}}
	for _, tt := range tests {
		if got := interpolate(curve, tt.x); got != tt.want {
			t.Errorf("interpolate(%g) = %g, want %g", tt.x, got, tt.want)
		}
	}
	if got := interpolate(curve[:1], 7); got != 1 {
		t.Errorf("interpolate of one point = %g, want 1", got)
	}
}
