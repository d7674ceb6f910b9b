//go:build unix

package main

import "testing"

func TestDigits(t *testing.T) {
	for _, tt := range []struct {
		x    float64
		want string
	}{{0.456, "0.46"}, {9.87, "9.87"}, {12.34, "12.3"}, {1234.5, "1234"}} {
		if got := digits(tt.x); got != tt.want {
			t.Errorf("digits(%g) = %s, want %s", tt.x, got, tt.want)
		}
	}
}

func TestSpreadOf(t *testing.T) {
	if got, want := spreadOf([]float64{3, 1, 2}), (spread{1, 2}); got != want {
		t.Errorf("spread %v, want %v", got, want)
	}
}
