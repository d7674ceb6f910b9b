package study

import (
	"math"
	"testing"
)

func TestFormatFraction(t *testing.T) {
	tests := []struct {
		inches float64
		want   string
	}{
		{0, "0"},
		{1, "1"},
		{0.5, "1/2"},
		{3.53, "3 17/32"},
		{-0.0625, "-1/16"},
		{-2.75, "-2 3/4"},
		{0.01, "0"},
		{-0.01, "0"},
		{1.0 / 64, "1/32"},
		{0.99, "1"},
		{math.NaN(), "NaN"},
		{math.Inf(-1), "-Inf"},
		{1e300, "1e+300"},
	}
	for _, tt := range tests {
		if got := FormatFraction(tt.inches); got != tt.want {
			t.Errorf("FormatFraction(%v) = %q, want %q", tt.inches, got, tt.want)
		}
	}
}

func TestFormatLength(t *testing.T) {
	tests := []struct {
		name     string
		x        float64
		units    Units
		fraction bool
		want     string
	}{
		{"millimetres", 12.7, Millimetre, false, "12.70 mm"},
		{"millimetres have no fractions", 12.7, Millimetre, true, "12.70 mm"},
		{"inches", 0.5, Inch, false, "0.500 in"},
		{"fraction", 0.5, Inch, true, "1/2 in"},
		{"half a mark", 1.0 / 64, Inch, true, "1/32 in"},
		{"less than half a mark", -0.015, Inch, true, "-0.015 in"},
		{"no fraction of nothing", 0, Inch, true, "0 in"},
		{"no negative zero", -0.001, Millimetre, false, "0.00 mm"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := FormatLength(tt.x, tt.units, tt.fraction); got != tt.want {
				t.Errorf("FormatLength(%v, %s, %t) = %q, want %q", tt.x, tt.units, tt.fraction, got, tt.want)
			}
		})
	}
}
