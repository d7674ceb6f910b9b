package number

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestToeLengths compares with the definitions of linear toe: base·sin over a plate
// (computed to the digits given), 1/16 in over 28 in and 0.010 in over 15 in as angles.
func TestToeLengths(t *testing.T) {
	const inch = 25.4
	tests := []struct {
		name                 string
		got, want, tolerance float64
	}{
		{"plate of 381 at 0.1 deg", OverPlate(0.1*radians, 381), 0.664970, 1e-6},
		{"plate of 381 at 1 deg", OverPlate(1*radians, 381), 6.649367, 1e-6},
		{"plate of 508 at 1 deg", OverPlate(1*radians, 508), 8.865822, 1e-6},
		{"1/16 in over 28 in", ToeOfPlate(inch/16, 28*inch) * degrees, 0.12789247, 1e-8},
		{"0.010 in over 15 in", ToeOfPlate(0.010*inch, 15*inch) * degrees, 0.03819719, 1e-8},
		{"indicators at 45 deg", OverIndicators(45*radians, 300), 300, 1e-12},
	}
	for _, tt := range tests {
		if !(math.Abs(tt.got-tt.want) <= tt.tolerance) {
			t.Errorf("%s: got %g, want %g", tt.name, tt.got, tt.want)
		}
	}
	if a := ToeOfPlate(301, 300); !math.IsNaN(a) {
		t.Errorf("ToeOfPlate(301, 300) = %g, want NaN", a)
	}
}

// gauged are styles of every gauge and unit.
var gauged = []Style{
	{},
	{Units: Inch},
	{Units: Millimetre, Gauge: Indicators, Base: 300},
	{Units: Inch, Fraction: 64, Gauge: Indicators, Base: 381},
	{Units: Millimetre, Gauge: Plate, Base: 610},
	{Units: Inch, Gauge: Plate, Base: 508},
}

// TestToeReadsWhatIsWritten checks that each style reads back its own numbers, and that
// of the value shown the toe comes back to the last bits.
func TestToeReadsWhatIsWritten(t *testing.T) {
	const digit = 1e-3 // deg: half of the last digit that any style writes over these bases
	rapid.Check(t, func(t *rapid.T) {
		deg := rapid.Float64Range(-25, 25).Draw(t, "deg")
		for _, s := range gauged {
			if got := s.ToeRead(s.ToeShown(deg)); !(math.Abs(got-deg) <= 1e-12*(1+math.Abs(deg))) {
				t.Errorf("%+v: %g deg comes back as %g deg", s, deg, got)
			}
			got, err := s.ParseToe(s.Toe(deg))
			if err != nil || !(math.Abs(got-deg) <= digit) {
				t.Errorf("%+v: %g deg, written %s, comes back as %g deg, %v", s, deg, s.Toe(deg), got, err)
			}
		}
	})
}

func TestPlateCannotReadMoreThanItsLength(t *testing.T) {
	s := Style{Units: Millimetre, Gauge: Plate, Base: 300}
	if deg, err := s.ParseToe("301"); err == nil || err.Error() != "301.00 mm is more than the base of 300 mm" {
		t.Errorf("ParseToe(301) over 300 mm = %g deg, %v, want an error", deg, err)
	}
}

// TestSlope turns 0.030 in of toe per inch of travel over a 15 in base (common practice)
// into degrees per mm and writes it, and the same as the slope of what the gauge reads.
func TestSlope(t *testing.T) {
	const base = 15 * 25.4
	rate := 0.030 / base * degrees
	in := Style{Units: Inch, Gauge: Plate, Base: base}
	mm := Style{Units: Millimetre, Gauge: Indicators, Base: base}
	tests := []struct{ got, want string }{
		{in.Slope(rate) + " " + in.SlopeUnit(), "0.03000 in/in over 15 in"},
		{mm.Slope(rate) + " " + mm.SlopeUnit(), "0.03000 mm/mm over 381 mm"},
		{Style{}.Slope(0.01) + " " + Style{}.SlopeUnit(), "0.01000 deg/mm"},
		{Style{Units: Inch}.Slope(0.01) + " " + Style{Units: Inch}.SlopeUnit(), "0.25400 deg/in"},
		{Style{Units: Inch}.Curvature(0.001) + " " + Style{Units: Inch}.CurvatureUnit(), "0.645160 deg/in²"},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
	const h = 1e-4
	for _, s := range gauged[2:] {
		slope := (s.ToeShown(h*rate) - s.ToeShown(-h*rate)) / (2 * h * s.shown(1))
		if want := rate * radians * s.Base; !(math.Abs(slope-want) <= 1e-9) {
			t.Errorf("%+v: slope of what the gauge reads %g, want %g", s, slope, want)
		}
	}
}

func TestGauges(t *testing.T) {
	for _, g := range []Gauge{Degrees, Indicators, Plate} {
		if GaugeOf(g.String()) != g {
			t.Errorf("GaugeOf(%q) = %v", g, GaugeOf(g.String()))
		}
	}
	if GaugeOf("") != Degrees {
		t.Error("no name is not degrees")
	}
}
