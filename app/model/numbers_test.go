package model

import (
	"math"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

func TestNumbersWrite(t *testing.T) {
	mm := Numbers{Units: study.Millimetre}
	in := Numbers{Units: study.Inch}
	rule := Numbers{Units: study.Inch, Fraction: true}
	dials := Numbers{Units: study.Millimetre, Toe: ToeIndicators, Base: 300}
	plate := Numbers{Units: study.Inch, Toe: ToePlate, Base: usualBase}
	// Over 300 mm, 1 degree is 300·tan 1° = 5.2365 mm; over 15 in, 15·sin 1° = 0.26179 in.
	tests := []struct{ name, got, want string }{
		{"millimetres", mm.Length(-12.345), "−12.35 mm"},
		{"inches", in.Length(12.7), "0.500 in"},
		{"thirty-seconds", rule.Length(25.4 * 3.53), "3 17/32 in"},
		{"whole travel", mm.Travel(50), "50 mm"},
		{"quarter inch", in.Travel(6.35), "0.25 in"},
		{"odd travel", mm.Travel(1.23456), "1.235 mm"},
		{"degrees", mm.ToeText(solver.Deg(-0.25)), "−0.250 deg"},
		{"indicators", dials.ToeText(solver.Deg(1)), "5.237 mm over 300 mm, indicators"},
		{"plate", plate.ToeText(solver.Deg(1)), "0.2618 in over 15 in, plate"},
		{"slope", mm.SlopeNumber(solver.Deg(0.01).Radians()) + " " + mm.SlopeUnit(), "0.0100 deg/mm"},
		{"slope by inch", in.SlopeNumber(solver.Deg(0.01).Radians()) + " " + in.SlopeUnit(), "0.2540 deg/in"},
		{"slope over the base", plate.SlopeNumber(1e-4) + " " + plate.SlopeUnit(), "0.0381 in/in over 15 in"},
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

func TestNumbersRead(t *testing.T) {
	mm, in := Numbers{Units: study.Millimetre}, Numbers{Units: study.Inch}
	tests := []struct {
		name string
		read func(string) (float64, error)
		text string
		want float64
		ok   bool
	}{
		{"millimetres", mm.ParseLength, "12,5", 12.5, true},
		{"inches", in.ParseLength, "−1/16", -1.5875, true},
		{"other unit", mm.ParseLength, "1/2 in", 12.7, true},
		{"word", mm.ParseLength, "long", 0, false},
		{"degrees", ParseDegrees, " −0,5° ", -0.5, true},
		{"degrees in a word", ParseDegrees, "1.25 deg", 1.25, true},
		{"infinite", ParseDegrees, "Inf", 0, false},
		{"nothing", ParseDegrees, "", 0, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.read(tt.text)
			if got != tt.want || (err == nil) != tt.ok {
				t.Errorf("read(%q) = %g, %v, want %g, ok %t", tt.text, got, err, tt.want, tt.ok)
			}
		})
	}
}

// TestToeReadsWhatIsWritten checks that each style reads back its own numbers.
func TestToeReadsWhatIsWritten(t *testing.T) {
	const tolerance = 1e-5 // rad: half of the last digit that any style writes over these bases
	for _, n := range []Numbers{
		{Units: study.Millimetre},
		{Units: study.Millimetre, Toe: ToeIndicators, Base: 300},
		{Units: study.Inch, Toe: ToePlate, Base: 508},
	} {
		for deg := -4.0; deg <= 4; deg += 0.37 {
			got, err := n.ParseToe(n.ToeNumber(solver.Deg(deg)))
			if err != nil || !(math.Abs(float64(got-solver.Deg(deg))) <= tolerance) {
				t.Errorf("%+v: %g deg comes back as %g deg, %v", n, deg, got.Degrees(), err)
			}
		}
	}
}

func TestPlateCannotReadMoreThanItsLength(t *testing.T) {
	n := Numbers{Units: study.Millimetre, Toe: ToePlate, Base: 300}
	if a, err := n.ParseToe("301"); err == nil {
		t.Errorf("ParseToe(301) over 300 mm = %g deg, want an error", a.Degrees())
	}
}

func TestNumbersOf(t *testing.T) {
	tests := []struct {
		name    string
		display *study.Display
		want    Numbers
	}{
		{"the file's own", nil, Numbers{Units: study.Inch, Base: usualBase}},
		{"fractions", &study.Display{Fraction: true}, Numbers{Units: study.Inch, Fraction: true, Base: usualBase}},
		{"millimetres have no fractions", &study.Display{Units: study.Millimetre, Fraction: true}, Numbers{Units: study.Millimetre, Base: usualBase}},
		{"a plate of 10 in", &study.Display{Toe: "plate", Base: 10}, Numbers{Units: study.Inch, Toe: ToePlate, Base: 254}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := NumbersOf(&study.Document{Units: study.Inch, Display: tt.display}); got != tt.want {
				t.Errorf("got %+v, want %+v", got, tt.want)
			}
		})
	}
}
