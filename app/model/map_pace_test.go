package model_test

import (
	"testing"
	"time"

	"toewright/app/model"
)

func TestMapPace(t *testing.T) {
	for _, tt := range []struct {
		name string
		took []time.Duration // by maps of 64 by 64
		want int
	}{
		{"nothing known yet", nil, 16},
		{"fast", []time.Duration{60 * time.Millisecond}, 64},
		{"as fast as must be", []time.Duration{80 * time.Millisecond}, 64},
		{"half as fast", []time.Duration{160 * time.Millisecond}, 32},
		{"slow", []time.Duration{time.Second}, 16},
		{"a slow tab wakes up", []time.Duration{time.Second, 40 * time.Millisecond, 40 * time.Millisecond, 40 * time.Millisecond}, 32},
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
