package optimize

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestGaugeReading uses D·sin(toe), the linear toe over a gauge length, and the
// slope of the wheel's plane at one height, by hand.
func TestGaugeReading(t *testing.T) {
	const digits = 5e-7 // mm, of the figures below
	for _, tt := range []struct {
		gauge     Gauge
		base, toe float64 // mm, deg
		want      float64 // mm
	}{
		{Plate, 381, 0.1, 0.664970},
		{Plate, 381, 1, 6.649367},
		{Tape, 508, 1, 8.865822},
		{Plate, 28 * 25.4, 0.12789247, 25.4 / 16},
		{Plate, 15 * 25.4, 0.03819719, 0.254},
		{Indicators, 300, 0, 0},
		{Indicators, 300, 45, 300},
		{Indicators, 300, -1, -5.236519},
		{Dial, 300, 1, 5.236519},
		{Plate, 300, 30, 150},
	} {
		if got := tt.gauge.Reading(solver.Deg(tt.toe), tt.base); !near(got, tt.want, digits) {
			t.Errorf("%s of %g mm at %g deg = %.7f, want %.7f", tt.gauge, tt.base, tt.toe, got, tt.want)
		}
	}
}

func TestGaugeToe(t *testing.T) {
	for g := Indicators; g <= Tape; g++ {
		for _, deg := range []float64{-40, -1, 0, 0.003, 2, 60} {
			toe := solver.Deg(deg)
			if got := g.Toe(g.Reading(toe, 300), 300); !near(float64(got), float64(toe), 1e-15) {
				t.Errorf("%s: Toe(Reading(%g deg)) = %.17g rad, want %.17g", g, deg, got, toe)
			}
		}
	}
	if got := Plate.Toe(301, 300); !math.IsNaN(float64(got)) {
		t.Errorf("a plate of 300 mm that reads 301 has toe %v, want NaN", got)
	}
}

func TestGaugeRate(t *testing.T) {
	const h, tol = 1e-5, 1e-7 // rad; truncation h²/6 of 300 mm and more
	for g := Indicators; g <= Tape; g++ {
		for _, deg := range []float64{-20, 0, 5} {
			toe := solver.Deg(deg)
			want := (g.Reading(toe+h, 300) - g.Reading(toe-h, 300)) / (2 * h)
			if got := g.rate(toe, 300); !near(got, want, tol*want) {
				t.Errorf("%s at %g deg: rate = %.9g, want %.9g", g, deg, got, want)
			}
		}
	}
}

func TestParseGauge(t *testing.T) {
	for g := Indicators; g <= Tape; g++ {
		if got, err := ParseGauge(g.String()); got != g || err != nil {
			t.Errorf("ParseGauge(%q) = %v, %v", g.String(), got, err)
		}
	}
	if got, err := ParseGauge(""); got != Indicators || err != nil {
		t.Errorf(`ParseGauge("") = %v, %v, want indicators`, got, err)
	}
	if _, err := ParseGauge("laser"); err == nil {
		t.Error(`ParseGauge("laser") is no error`)
	}
}
