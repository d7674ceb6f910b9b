package plot

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// equal compares values where a gap equals a gap.
func equal(a, b []float64) bool {
	return slices.EqualFunc(a, b, func(x, y float64) bool {
		return x == y || math.IsNaN(x) && math.IsNaN(y)
	})
}

// resample returns the values that a whole stroke of the pointer draws at the
// places at, which must grow; NaN where the hand has not been.
func resample(stroke []Sample, at []float64) []float64 {
	values := make([]float64, len(at))
	for i := range values {
		values[i] = math.NaN()
	}
	for i, s := range stroke {
		Stroke(at, values, stroke[max(i-1, 0)], s)
	}
	return values
}

func TestStroke(t *testing.T) {
	at := []float64{-20, -10, 0, 10, 20}
	tests := []struct {
		name   string
		stroke []Sample
		want   []float64
	}{
		{"upward", []Sample{{-10, 1}, {10, 3}}, []float64{nan, 1, 2, 3, nan}},
		{"downward", []Sample{{10, 3}, {-10, 1}}, []float64{nan, 1, 2, 3, nan}},
		{"beyond both ends", []Sample{{-40, 0}, {40, 8}}, []float64{2, 3, 4, 5, 6}},
		{"small steps", []Sample{{-3, 1}, {-1, 1}, {1, 1}, {4, 1}}, []float64{nan, nan, 1, nan, nan}},
		{"back over itself", []Sample{{-20, 0}, {20, 0}, {0, 4}}, []float64{0, 0, 4, 2, 0}},
		{"a touch", []Sample{{6, 5}}, []float64{nan, nan, nan, 5, nan}},
		{"a touch outside", []Sample{{21, 5}}, []float64{nan, nan, nan, nan, nan}},
		{"a touch below", []Sample{{-21, 5}}, []float64{nan, nan, nan, nan, nan}},
		{"nothing", nil, []float64{nan, nan, nan, nan, nan}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := resample(tt.stroke, at); !equal(got, tt.want) {
				t.Errorf("resample(%v) = %v, want %v", tt.stroke, got, tt.want)
			}
		})
	}
}

func TestSamples(t *testing.T) {
	got := Samples([]float64{1, 2, 3, 4}, []float64{5, nan, 7})
	if want := []Sample{{1, 5}, {3, 7}}; !slices.Equal(got, want) {
		t.Errorf("Samples = %v, want %v", got, want)
	}
}

func TestFrameSamples(t *testing.T) {
	f := toeFrame()
	pointer := []Point{{140, 210}, {240, 10}}
	if got, want := f.Samples(Vertical, pointer), []Sample{{0, 0}, {50, 1}}; !slices.Equal(got, want) {
		t.Errorf("travel upward: %v, want %v", got, want)
	}
	if got, want := f.Samples(Horizontal, pointer), []Sample{{0, 0}, {1, 50}}; !slices.Equal(got, want) {
		t.Errorf("travel sideways: %v, want %v", got, want)
	}
}

// However the hand went, the target stays between the least and the most it drew
// and has one value at each place.
func TestStrokeStaysWithinTheStroke(t *testing.T) {
	at := []float64{-30, -20, -10, 0, 10, 20, 30}
	rapid.Check(t, func(t *rapid.T) {
		var stroke []Sample
		var drawn []float64
		for range rapid.IntRange(1, 30).Draw(t, "n") {
			s := Sample{rapid.Float64Range(-40, 40).Draw(t, "at"), rapid.Float64Range(-1, 1).Draw(t, "value")}
			stroke, drawn = append(stroke, s), append(drawn, s.Value)
		}
		d, _ := DomainOf(drawn)
		got, _ := DomainOf(resample(stroke, at), drawn)
		if got.Low < d.Low-1e-12 || got.High > d.High+1e-12 {
			t.Fatalf("%v gives values %v", stroke, got)
		}
	})
}
