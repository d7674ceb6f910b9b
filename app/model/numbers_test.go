package model

import (
	"math"
	"testing"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

func TestNumbersWriteAngles(t *testing.T) {
	mm := Numbers{}
	dials := Numbers{Style: number.Style{Gauge: number.Indicators, Base: 300}}
	plate := Numbers{Style: number.Style{Units: study.Inch, Gauge: number.Plate, Base: study.UsualBase}}
	// Over 300 mm, 1 degree is 300·tan 1° = 5.2365 mm; over 15 in, 15·sin 1° = 0.26179 in.
	tests := []struct{ name, got, want string }{
		{"degrees", mm.ToeText(solver.Deg(-0.25)), "−0.250 deg"},
		{"indicators", dials.ToeText(solver.Deg(1)), "5.237 mm over 300 mm, indicators"},
		{"plate", plate.ToeText(solver.Deg(1)), "0.2618 in over 15 in, plate"},
		{"no number", mm.ToeText(solver.Angle(math.NaN())), "– deg"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if tt.got != tt.want {
				t.Errorf("got %q, want %q", tt.got, tt.want)
			}
		})
	}
}
