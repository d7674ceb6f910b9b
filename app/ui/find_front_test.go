package ui

import (
	"math"
	"testing"

	"toewright/internal/plot"
)

func TestNearestChoice(t *testing.T) {
	f := &front{X: []float64{0, 10, 10.2, math.NaN()}, Y: []float64{4, 1, 0.5, 2}}
	place := func(i int) plot.Point { return f.chart().Frame().At(f.X[i], f.Y[i]) }
	for _, tt := range []struct {
		name string
		at   plot.Point
		want int
		ok   bool
	}{
		{"on the first", place(0), 0, true},
		{"beside the first", place(0).Add(plot.Point{X: 15, Y: -15}), 0, true},
		{"between two, nearer to one", place(1).Towards(place(2), 0.6), 2, true},
		{"away from all", place(0).Towards(place(1), 0.5), 0, false},
	} {
		if got, ok := f.nearest(tt.at); ok != tt.ok || ok && got != tt.want {
			t.Errorf("%s: choice %d, %t, want %d, %t", tt.name, got, ok, tt.want, tt.ok)
		}
	}
}
