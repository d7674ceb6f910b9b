package nlp

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestVariableUnit(t *testing.T) {
	v := Variable{Min: -0.3, Max: 0.1}
	tests := []struct {
		name    string
		x, unit float64
	}{
		{"minimum", -0.3, 0},
		{"maximum", 0.1, 1},
		{"middle", -0.1, 0.5},
		{"below", -7, 0},
		{"above", math.Inf(1), 1},
		{"NaN", math.NaN(), 0.5},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := v.ToUnit(tt.x); !near(got, tt.unit, 1e-15) {
				t.Errorf("toUnit(%g) = %g, want %g", tt.x, got, tt.unit)
			}
		})
	}
}

// TestVariableEnds checks that the ends come back without rounding.
func TestVariableEnds(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 1000 {
		v := Variable{Min: rng.NormFloat64()}
		v.Max = v.Min + rng.ExpFloat64()
		if v.FromUnit(0) != v.Min || v.FromUnit(1) != v.Max {
			t.Fatalf("ends of %v = %g, %g, want them exactly", v, v.FromUnit(0), v.FromUnit(1))
		}
	}
}

func TestVariableValid(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	tests := []struct {
		min, max float64
		want     bool
	}{
		{-1, 1, true}, {1, 1, false}, {1, -1, false}, {nan, 1, false}, {0, nan, false},
		{-inf, 1, false}, {0, inf, false}, {-math.MaxFloat64, math.MaxFloat64, false},
	}
	for _, tt := range tests {
		if got := (Variable{Min: tt.min, Max: tt.max}).valid(); got != tt.want {
			t.Errorf("valid() of %g to %g = %t, want %t", tt.min, tt.max, got, tt.want)
		}
	}
}

func TestBoundAt(t *testing.T) {
	tests := []struct {
		u    float64
		want Bound
		name string
	}{
		{0, AtMin, "at minimum"},
		{1e-300, Inside, "inside"},
		{0.5, Inside, "inside"},
		{1, AtMax, "at maximum"},
	}
	for _, tt := range tests {
		if got := boundAt(tt.u); got != tt.want || got.String() != tt.name {
			t.Errorf("boundAt(%g) = %v, want %q", tt.u, got, tt.name)
		}
	}
	if got := Bound(2).String(); got != "unknown bound" {
		t.Errorf("Bound(2).String() = %q, want unknown bound", got)
	}
}
