package model_test

import (
	"testing"

	"toewright/app/model"
)

func TestMapPace(t *testing.T) {
	for _, tt := range []struct {
		name string
		took []float64 // s, by maps of 64 by 64
		want int
	}{
		{"nothing known yet", nil, 16},
		{"fast", []float64{0.06}, 64},
		{"as fast as must be", []float64{0.08}, 64},
		{"half as fast", []float64{0.16}, 32},
		{"slow", []float64{1}, 16},
		{"a slow tab wakes up", []float64{1, 0.04, 0.04, 0.04}, 32},
	} {
		var p model.MapPace
		for _, d := range tt.took {
			p.Took(model.FullMap, d)
		}
		if got := p.Live(); got != tt.want {
			t.Errorf("%s: a live map is of %d, want %d", tt.name, got, tt.want)
		}
	}
}
