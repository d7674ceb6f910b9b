package report

import (
	"math"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/number"
)

func TestNumbersOfMillimetres(t *testing.T) {
	n := numbersOf(car(t, "double-wishbone-rack"))
	tests := []struct{ got, want string }{
		{n.length(-1.5), "−1.50"},
		{n.length(math.NaN()), "–"},
		{n.made(12), "12.00"},
		{n.moved(-12, "up", "down"), "12.00 down"},
		{n.moved(0.5, "up", "down"), "0.50 up"},
		{n.moved(-0.001, "up", "down"), "0.00"},
		{n.travel(-50), "−50"},
		{n.toe(0.12345), "0.123"},
		{number.Signed(1, "1.00"), "+1.00"},
		{number.Signed(-1, "−1.00"), "−1.00"},
		{number.Signed(1e-9, "0.00"), "0.00"},
		{n.figure(angleKind, 1.234), "1.234"},
		{n.figure(percentKind, 11.46), "11.5"},
		{n.figure(longKind, 10292.6), "10293"},
		{n.figure(ratioKind, engine.Number(math.NaN())), "–"},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}

// TestNumbersOfInches: a study in mm that is shown in fractions has both where a part
// is to be made.
func TestNumbersOfInches(t *testing.T) {
	n := numbersOf(inInches(t))
	tests := []struct{ got, want string }{
		{n.length(12.7), "0.500"},
		{n.made(12.7), "0.500 (1/2)"},
		{n.moved(-25.4, "up", "down"), "1.000 down"},
		{n.travel(12.7), "0.5"},
		{n.toe(1), "0.2618"}, // 15 in · sin 1°
		{n.unit(lengthKind), "in"},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}
