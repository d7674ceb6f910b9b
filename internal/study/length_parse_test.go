package study

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
		"NaN", "inf", "--1", "5 ft", "1/2/3", strings.Repeat("9", 400),
	} {
		t.Run(text, func(t *testing.T) {
			if got, err := ParseLength(text, Millimetre); err == nil {
				t.Errorf("ParseLength(%q) = %v, want an error", text, got)
			}
		})
	}
}

func TestParseLengthErrorNamesTheText(t *testing.T) {
	_, err := ParseLength("12.7 furlongs", Millimetre)
	const want = `study: "12.7 furlongs" is no length, want a number like 12.7, 3 1/32 or 3.5 in`
	if err == nil || err.Error() != want {
		t.Errorf("ParseLength = %v, want %s", err, want)
	}
}

// TestParseLengthReadsFractions checks that every mark of a workshop rule that is
// written is read back to the same number.
func TestParseLengthReadsFractions(t *testing.T) {
	for marks := -100 * thirtySeconds; marks <= 100*thirtySeconds; marks++ {
		x := float64(marks) / thirtySeconds
		got, err := ParseLength(FormatFraction(x), Inch)
		if err != nil || got != x {
			t.Fatalf("ParseLength(%q) = %v, %v, want %v", FormatFraction(x), got, err, x)
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
