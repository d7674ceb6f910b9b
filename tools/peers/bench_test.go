//go:build unix

package main

import (
	"slices"
	"testing"
)

func TestParse(t *testing.T) {
	a, err := parse("tool", "time 12.5\ntime 11\ntoe 0.25\ntoe -0.5\nbest 0.08\nevaluations 577\n")
	if err != nil {
		t.Fatal(err)
	}
	if want := []float64{12.5, 11}; !slices.Equal(a.times, want) {
		t.Errorf("times %v, want %v", a.times, want)
	}
	if want := []float64{0.25, -0.5}; !slices.Equal(a.toes, want) {
		t.Errorf("toes %v, want %v", a.toes, want)
	}
	if a.best != 0.08 || a.evaluations != 577 {
		t.Errorf("best %g after %d, want 0.08 after 577", a.best, a.evaluations)
	}
}

func TestParseRefuses(t *testing.T) {
	for _, tt := range []struct{ name, text string }{
		{"nothing", ""},
		{"no time", "toe 1\n"},
		{"a message", "time 1\ncould not converge\n"},
	} {
		if _, err := parse("tool", tt.text); err == nil {
			t.Errorf("%s: accepted", tt.name)
		}
	}
}
