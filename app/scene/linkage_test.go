package scene

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/internal/plot"
)

func TestHull(t *testing.T) {
	tests := []struct {
		name         string
		points, want []plot.Point
	}{
		{
			name:   "square with points inside and on an edge",
			points: []plot.Point{{X: 1, Y: 1}, {X: 0, Y: 0}, {X: 2, Y: 2}, {X: 0, Y: 2}, {X: 2, Y: 0}, {X: 1, Y: 0}},
			want:   []plot.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 2}, {X: 0, Y: 2}},
		},
		{name: "two", points: []plot.Point{{X: 3, Y: 1}, {X: 0, Y: 0}}, want: []plot.Point{{X: 0, Y: 0}, {X: 3, Y: 1}}},
		{name: "one, twice", points: []plot.Point{{X: 1, Y: 1}, {X: 1, Y: 1}}, want: []plot.Point{{X: 1, Y: 1}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, hull(tt.points)); diff != "" {
				t.Errorf("hull differs from the one wanted: %s", diff)
			}
		})
	}
}

func TestRoundedStandsOff(t *testing.T) {
	square := []plot.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 0, Y: 10}}
	const want = "M-2 0A2 2 0 0 1 0 -2L10 -2A2 2 0 0 1 12 0L12 10A2 2 0 0 1 10 12L0 12A2 2 0 0 1 -2 10Z"
	if got := appendRounded(nil, square, 2).String(); got != want {
		t.Errorf("outline 2 off a square = %s, want %s", got, want)
	}
}

func TestBarHasRoundEnds(t *testing.T) {
	tests := []struct {
		name string
		to   plot.Point
		want string
	}{
		{"level", plot.Point{X: 10}, "M0 2A2 2 0 0 1 0 -2L10 -2A2 2 0 0 1 10 2Z"},
		{"end-on", plot.Point{}, "M-2 0A2 2 0 0 1 2 0A2 2 0 0 1 -2 0Z"},
	}
	for _, tt := range tests {
		if got := appendBar(nil, plot.Point{}, tt.to, 4).String(); got != tt.want {
			t.Errorf("%s bar = %s, want %s", tt.name, got, tt.want)
		}
	}
}
