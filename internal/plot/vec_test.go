package plot

import (
	"math"
	"testing"
)

func TestVec(t *testing.T) {
	x, y, z := Vec{X: 1}, Vec{Y: 1}, Vec{Z: 1}
	v, w := Vec{1, 2, 3}, Vec{-4, 0, 5}
	tests := []struct {
		name      string
		got, want Vec
	}{
		{"add", v.Add(w), Vec{-3, 2, 8}},
		{"sub", v.Sub(w), Vec{5, 2, -2}},
		{"times", v.Times(2), Vec{2, 4, 6}},
		{"forward by left is up", x.Cross(y), z},
		{"left by up is forward", y.Cross(z), x},
		{"up by forward is left", z.Cross(x), y},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if tt.got != tt.want {
				t.Errorf("got %v, want %v", tt.got, tt.want)
			}
		})
	}
	if v.Dot(w) != 11 || (Vec{2, 3, 6}).Length() != 7 || !math.IsNaN((Vec{X: nan}).Length()) {
		t.Errorf("Dot = %v, Length = %v", v.Dot(w), Vec{2, 3, 6}.Length())
	}
}
