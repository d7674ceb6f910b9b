package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var nan = math.NaN()

func TestAppendLine(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	tests := []struct {
		name   string
		xs, ys []float64
		want   string
	}{
		{"straight", []float64{0, 5, 10}, []float64{0, 5, 5}, "M0 100L50 50L100 50"},
		{"gap", []float64{0, 1, 2, 3, 4}, []float64{0, 1, nan, 3, 4}, "M0 100L10 90M30 70L40 60"},
		{"infinite is a gap", []float64{0, 1, math.Inf(1), 3, 4}, []float64{0, 1, 2, 3, 4}, "M0 100L10 90M30 70L40 60"},
		{"alone between gaps", []float64{0, 1, 2}, []float64{nan, 1, nan}, ""},
		{"out and in again", []float64{0, 5, 10}, []float64{5, 15, 5}, "M0 50L25 0M75 0L100 50"},
		{"lists of two lengths", []float64{0, 10, 20}, []float64{0, 10}, "M0 100L100 0"},
		{"nothing", nil, nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := f.AppendLine(nil, tt.xs, tt.ys).String(); got != tt.want {
				t.Errorf("AppendLine = %q, want %q", got, tt.want)
			}
		})
	}
}

// wild draws values of which some lie outside 0..10 and some are gaps.
func wild(t *rapid.T, label string, n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = rapid.OneOf(rapid.Float64Range(-30, 40), rapid.Just(nan)).Draw(t, label)
	}
	return list
}

// rising draws n values that grow from about -5 to about 15.
func rising(t *rapid.T, n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = -5 + 20*(float64(i)+rapid.Float64Range(0, 0.9).Draw(t, "at"))/float64(n)
	}
	return list
}

func TestCurvesStayInTheFrame(t *testing.T) {
	area := Box(12.5, 20, 100, 150)
	f := NewFrame(area, Domain{0, 10}, Domain{0, 10})
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 20).Draw(t, "n")
		at, u, v := rising(t, n), wild(t, "u", n), wild(t, "v", n)
		wantWithin(t, f.AppendLine(nil, u, v), area)
		wantWithin(t, f.AppendSmooth(nil, u, v), area)
		wantWithin(t, f.AppendMonotone(nil, Vertical, u, at), area)
		wantWithin(t, f.AppendMonotone(nil, Horizontal, at, u), area)
		wantWithin(t, f.AppendBand(nil, Vertical, at, u, v), area)
		wantWithin(t, f.AppendBand(nil, Horizontal, at, u, v), area)
	})
}
