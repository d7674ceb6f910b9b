package number

import (
	"math"
	"testing"
)

func TestDecimal(t *testing.T) {
	tests := []struct {
		name     string
		v        float64
		decimals int
		want     string
	}{
		{"rounded", 1.256, 2, "1.26"},
		{"real minus", -3, 1, "−3.0"},
		{"no sign before zero", -0.004, 2, "0.00"},
		{"whole", 12.5, 0, "12"},
		{"gap", math.NaN(), 2, "–"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Decimal(tt.v, tt.decimals); got != tt.want {
				t.Errorf("Decimal(%v, %d) = %q, want %q", tt.v, tt.decimals, got, tt.want)
			}
		})
	}
}

func TestSigned(t *testing.T) {
	for _, tt := range []struct {
		v    float64
		want string
	}{
		{1.5, "+1.5"}, {-1.5, "−1.5"}, {0, "0.0"}, {0.01, "0.0"}, {-0.01, "0.0"}, {math.NaN(), "–"},
	} {
		if got := Signed(tt.v, Decimal(tt.v, 1)); got != tt.want {
			t.Errorf("Signed(%g) = %q, want %q", tt.v, got, tt.want)
		}
	}
	if got := Signed(0.5, Fraction(0.5, 64)); got != "+1/2" {
		t.Errorf("Signed of a fraction = %q, want +1/2", got)
	}
}
