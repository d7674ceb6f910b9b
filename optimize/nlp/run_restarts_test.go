package nlp

import (
	"slices"
	"testing"
)

// TestHaltonPlain checks the sequence without scrambling by its definition.
func TestHaltonPlain(t *testing.T) {
	h := Halton{{2, 1, 0}, {3, 1, 0}}
	want := [][]float64{{0, 0}, {0.5, 1. / 3}, {0.25, 2. / 3}, {0.75, 1. / 9}, {0.125, 4. / 9}, {0.625, 7. / 9}}
	u := make([]float64, 2)
	for i, w := range want {
		if h.Point(i, u); !nearAll(u, w, 1e-15) {
			t.Errorf("point %d = %v, want %v", i, u, w)
		}
	}
}

// TestHaltonScrambled checks that each of base^k cells of a variable holds one of as
// many successive points, whatever the seed.
func TestHaltonScrambled(t *testing.T) {
	tests := []struct{ variable, base, points int }{{0, 2, 64}, {1, 3, 81}, {2, 5, 125}, {5, 13, 169}}
	for _, tt := range tests {
		for seed := range uint64(4) {
			h, u := NewHalton(6, seed), make([]float64, 6)
			if h[tt.variable].base != tt.base {
				t.Fatalf("variable %d has base %d, want %d", tt.variable, h[tt.variable].base, tt.base)
			}
			var places []float64
			for i := range tt.points {
				h.Point(i, u)
				places = append(places, u[tt.variable]*float64(tt.points))
			}
			slices.Sort(places)
			for k, x := range places {
				if !near(x, float64(k)+0.5, 0.5+1e-9) { // rounding at the edges of a cell
					t.Fatalf("seed %d, variable %d: point %d of %d lies in cell %.3f", seed, tt.variable, k, tt.points, x)
				}
			}
		}
	}
}

func TestHaltonSeeds(t *testing.T) {
	first := func(seed uint64) []float64 {
		u := make([]float64, 4)
		NewHalton(4, seed).Point(1, u)
		return u
	}
	if !slices.Equal(first(1), first(1)) {
		t.Error("the same seed gave other points")
	}
	if slices.Equal(first(1), first(2)) {
		t.Error("another seed gave the same points")
	}
}
