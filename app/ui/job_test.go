package ui

import (
	"testing"
	"time"

	"toewright/internal/engine"
)

func TestTimesInWords(t *testing.T) {
	for d, want := range map[time.Duration][2]string{
		120 * time.Millisecond: {"less than a second", "less than a second"},
		700 * time.Millisecond: {"1 s", "about 1 s"},
		89 * time.Second:       {"89 s", "about 89 s"},
		100 * time.Second:      {"2 min", "about 2 min"},
	} {
		if got := [2]string{seconds(d), about(d)}; got != want {
			t.Errorf("%s is %q, want %q", d, got, want)
		}
	}
}

func TestGainInWords(t *testing.T) {
	for x, want := range map[engine.Number]string{
		0.14: "+14.0 % of the cars", -0.002: "−0.2 % of the cars", 0.0001: "0.0 % of the cars", 0: "0.0 % of the cars",
	} {
		if got := gain(x); got != want {
			t.Errorf("a gain of %g is %q, want %q", float64(x), got, want)
		}
	}
}
