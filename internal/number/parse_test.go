package number

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseLength(t *testing.T) {
	tests := []struct {
		name, text string
		units      Units
		want       float64
	}{
		{"decimal", "12.7", Millimetre, 12.7},
		{"decimal comma", "12,5", Millimetre, 12.5},
		{"no digit before the point", ".5", Inch, 0.5},
		{"sign", "-3", Millimetre, -3},
		{"plus", "+ 3", Millimetre, 3},
		{"typographic minus", "−3", Millimetre, -3},
		{"fraction", "1/16", Inch, 0.0625},
		{"negative fraction", "-1/16", Inch, -0.0625},
		{"whole and fraction", "3 1/32", Inch, 3.03125},
		{"whole-fraction", "3-1/32", Inch, 3.03125},
		{"negative whole and fraction", "-3 1/32", Inch, -3.03125},
		{"one sign", "2½", Inch, 2.5},
		{"inches among millimetres", "3.5in", Millimetre, 88.9},
		{"inch mark", `3 1/2"`, Inch, 3.5},
		{"two strokes", "1''", Millimetre, 25.4},
		{"word", "2 inches", Inch, 2},
		{"capitals", "10 MM", Millimetre, 10},
		{"millimetres among inches", "12.7 mm", Inch, 0.5},
		{"centimetres", "2 cm", Millimetre, 20},
		{"spaces", "  7 ", Millimetre, 7},
		{"as it is written", "0.266 in (17/64)", Millimetre, 17 * 25.4 / 64},
		{"as a cell has it", "−0.275 (−9/32 plus 0.006)", Inch, -0.275},
		{"difference", "9.75 - 1/8", Inch, 9.625},
		{"typographic minus between", "9.75 − 1/8 in", Inch, 9.625},
		{"sum", "27+3/16", Inch, 27.1875},
		{"sum of three", "-1 + 2 1/2 - 0.25", Inch, 1.25},
		{"no-break space", "3\u00a01/4", Inch, 3.25},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := ParseLength(tt.text, tt.units)
			if err != nil || got != tt.want { // exact: each value is one correctly rounded operation away
				t.Errorf("ParseLength(%q, %s) = %v, %v, want %v", tt.text, tt.units, got, err, tt.want)
			}
		})
	}
}

func TestParseLengthErrors(t *testing.T) {
	for _, text := range []string{
		"", " ", "mm", "-", "1/0", "1/-2", "1 2 3/4", "1,234.5", "1,2,3", "1.2.3", "3 1.5/2", "abc", "0x10", "1e3",
		"NaN", "inf", "--1", "5 ft", "1/2/3", "0.5 (1/4)", "0.275 (9/32)", "0.275 (9/32 plus 0.006)", "0.5 (", "0.5)", "(1/2)", "1 +", "+ + 1", "1 - -2", "1 + + 2", "1 - ", strings.Repeat("9", 400),
	} {
		t.Run(text, func(t *testing.T) {
			if got, err := ParseLength(text, Millimetre); err == nil {
				t.Errorf("ParseLength(%q) = %v, want an error", text, got)
			}
		})
	}
}

func TestParseLengthErrorNamesTheText(t *testing.T) {
	for u, want := range map[Units]string{
		Millimetre: `"12.7 furlongs" is not a length; type a number like 12.7, or 1/2 in`,
		Inch:       `"12.7 furlongs" is not a length; type a number like 0.5, 1/2 or 12.7 mm`,
	} {
		if _, err := ParseLength("12.7 furlongs", u); err == nil || err.Error() != want {
			t.Errorf("ParseLength = %v, want %s", err, want)
		}
	}
}

func TestParseDegrees(t *testing.T) {
	for text, want := range map[string]float64{" −0,5° ": -0.5, "1.25 deg": 1.25, "2 degrees": 2, "1/2": 0.5, "+3": 3} {
		if got, err := ParseDegrees(text); err != nil || got != want {
			t.Errorf("ParseDegrees(%q) = %g, %v, want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"", "Inf", "NaN", "1 mm", "deg", "1,2,3", "1e3"} {
		if got, err := ParseDegrees(text); err == nil {
			t.Errorf("ParseDegrees(%q) = %g, want an error", text, got)
		}
	}
}

func TestParseLengthNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		if x, err := ParseLength(text, Inch); err == nil && math.IsNaN(x) {
			t.Fatalf("ParseLength(%q) = NaN without an error", text)
		}
	})
}
