package plot

import (
	"math"
	"testing"
)

func TestInterpolate(t *testing.T) {
	rise, fall := []float64{-10, 0, 20}, []float64{20, 0, -10}
	tests := []struct {
		name       string
		at, values []float64
		x, want    float64
		ok         bool
	}{
		{"between", rise, []float64{1, 2, 4}, 5, 2.5, true},
		{"at a value", rise, []float64{1, 2, 4}, 0, 2, true},
		{"low end", rise, []float64{1, 2, 4}, -10, 1, true},
		{"high end", rise, []float64{1, 2, 4}, 20, 4, true},
		{"below", rise, []float64{1, 2, 4}, -10.1, 0, false},
		{"above", rise, []float64{1, 2, 4}, 20.1, 0, false},
		{"falling", fall, []float64{4, 2, 1}, 5, 2.5, true},
		{"falling, at a value", fall, []float64{4, 2, 1}, 0, 2, true},
		{"falling, first", fall, []float64{4, 2, 1}, 20, 4, true},
		{"falling, last", fall, []float64{4, 2, 1}, -10, 1, true},
		{"falling, above", fall, []float64{4, 2, 1}, 21, 0, false},
		{"beside a gap", rise, []float64{1, nan, 4}, 5, 0, false},
		{"value beside a gap", rise, []float64{1, nan, 4}, 20, 4, true},
		{"no place", rise, []float64{1, 2, 4}, nan, 0, false},
		{"single value", []float64{3}, []float64{7}, 3, 7, true},
		{"nothing", nil, nil, 0, 0, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, ok := Interpolate(tt.at, tt.values, tt.x)
			if ok != tt.ok || ok && math.Abs(got-tt.want) > 1e-15 {
				t.Errorf("Interpolate(%v) = %v, %v, want %v, %v", tt.x, got, ok, tt.want, tt.ok)
			}
		})
	}
}
