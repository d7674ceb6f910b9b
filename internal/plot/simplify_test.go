package plot

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestSimplify(t *testing.T) {
	tests := []struct {
		name      string
		samples   []Sample
		tolerance float64
		want      []Sample
	}{
		{"straight", []Sample{{0, 0}, {1, 1}, {2, 2}, {3, 3}}, 0.01, []Sample{{0, 0}, {3, 3}}},
		{"a bend", []Sample{{0, 0}, {1, 0}, {2, 0}, {3, 1}}, 0.01, []Sample{{0, 0}, {2, 0}, {3, 1}}},
		{"within tolerance", []Sample{{0, 0}, {1, 0.1}, {2, 0}}, 0.1, []Sample{{0, 0}, {2, 0}}},
		{"two", []Sample{{0, 0}, {1, 1}}, 1, []Sample{{0, 0}, {1, 1}}},
		{"nothing", nil, 1, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Simplify(tt.samples, tt.tolerance); !slices.Equal(got, tt.want) {
				t.Errorf("Simplify(%v) = %v, want %v", tt.samples, got, tt.want)
			}
		})
	}
}

func TestSimplifyHoldsEverySample(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var samples []Sample
		for i := range rapid.IntRange(0, 40).Draw(t, "n") {
			samples = append(samples, Sample{float64(i), rapid.Float64Range(-1, 1).Draw(t, "value")})
		}
		tolerance := rapid.Float64Range(0, 1).Draw(t, "tolerance")
		var at, values []float64
		for _, s := range Simplify(samples, tolerance) {
			at, values = append(at, s.At), append(values, s.Value)
		}
		for _, s := range samples {
			got, ok := Interpolate(at, values, s.At)
			if !ok || !near(got, s.Value, tolerance+1e-12) {
				t.Fatalf("the simplified curve gives %v at %v, want %v within %v", got, s.At, s.Value, tolerance)
			}
		}
	})
}

func TestSimplifyKeepsTheSource(t *testing.T) {
	samples := []Sample{{0, 0}, {1, 5}, {2, 0}}
	source := slices.Clone(samples)
	Simplify(samples, 0)[0].Value = 9
	if !slices.Equal(samples, source) {
		t.Errorf("Simplify shares memory with its source: %v", samples)
	}
}
