package number

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestFraction(t *testing.T) {
	tests := []struct {
		name        string
		v           float64
		denominator int
		want        string
	}{
		{"reduced", 0.25, 32, "1/4"},
		{"rounded", 0.26, 16, "1/4"},
		{"mixed and negative", -1.1875, 16, "−1 3/16"},
		{"whole", 3, 16, "3"},
		{"rounds up to a whole", 0.99, 16, "1"},
		{"rounds to zero without sign", -0.01, 16, "0"},
		{"too large for a fraction", 1e15, 16, "1000000000000000"},
		{"infinite", math.Inf(-1), 16, "–"},
		{"gap", math.NaN(), 16, "–"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Fraction(tt.v, tt.denominator); got != tt.want {
				t.Errorf("Fraction(%v, %d) = %q, want %q", tt.v, tt.denominator, got, tt.want)
			}
		})
	}
}

// TestLengthsWithFractions has decimal equivalents of the workshop's tables (common
// practice): 17/64 is 0.265625, 21/32 0.65625, 9/32 0.28125.
func TestLengthsWithFractions(t *testing.T) {
	tests := []struct {
		inches                    float64
		of16, of32, of64, without string
	}{
		{17.0 / 64, "0.266 in (17/64)", "0.266 in (17/64)", "0.266 in (17/64)", "0.266 in"},
		{-17.0 / 64, "−0.266 in (−17/64)", "−0.266 in (−17/64)", "−0.266 in (−17/64)", "−0.266 in"},
		{0.266, "0.266 in (17/64)", "0.266 in (17/64)", "0.266 in (17/64)", "0.266 in"},
		{0.275, "0.275 in (1/4 plus 0.025)", "0.275 in (9/32 less 0.006)", "0.275 in (9/32 less 0.006)", "0.275 in"},
		{-0.275, "−0.275 in (−1/4 less 0.025)", "−0.275 in (−9/32 plus 0.006)", "−0.275 in (−9/32 plus 0.006)", "−0.275 in"},
		{0.660, "0.660 in (11/16 less 0.028)", "0.660 in (21/32 plus 0.004)", "0.660 in (21/32 plus 0.004)", "0.660 in"},
		{0.020, "0.020 in", "0.020 in (1/32 less 0.011)", "0.020 in (1/64 plus 0.004)", "0.020 in"},
		{1.0 / 64, "0.016 in (1/64)", "0.016 in (1/64)", "0.016 in (1/64)", "0.016 in"},
		{0.010, "0.010 in", "0.010 in", "0.010 in (1/64 less 0.006)", "0.010 in"},
		{-0.005, "−0.005 in", "−0.005 in", "−0.005 in", "−0.005 in"},
		{0, "0.000 in", "0.000 in", "0.000 in", "0.000 in"},
		{3, "3.000 in", "3.000 in", "3.000 in", "3.000 in"},
		{3.53125, "3.531 in (3 17/32)", "3.531 in (3 17/32)", "3.531 in (3 17/32)", "3.531 in"},
		{0.998, "0.998 in (1 less 0.002)", "0.998 in (1 less 0.002)", "0.998 in (1 less 0.002)", "0.998 in"},
		{math.NaN(), "– in", "– in", "– in", "– in"},
		{1e300, fmt.Sprintf("%.3f in", 1e300), fmt.Sprintf("%.3f in", 1e300), fmt.Sprintf("%.3f in", 1e300), fmt.Sprintf("%.3f in", 1e300)},
	}
	for _, tt := range tests {
		for of, want := range map[int]string{16: tt.of16, 32: tt.of32, 64: tt.of64, 0: tt.without} {
			if got := (Style{Units: Inch, Fraction: of}).Length(Inch.Millimetres(tt.inches)); got != want {
				t.Errorf("%g in of 1/%d: %q, want %q", tt.inches, of, got, want)
			}
		}
	}
	if got := (Style{Units: Millimetre, Fraction: 32}).Length(12.7); got != "12.70 mm" {
		t.Errorf("12.7 mm with fractions = %q", got)
	}
}

// lengths are drawn about marks of a rule, and anywhere.
func lengths(t *rapid.T) float64 {
	mark := float64(rapid.IntRange(-400, 400).Draw(t, "64ths")) / 64
	off := rapid.SampledFrom([]float64{0, 1e-12, 2e-9, 1e-5, 0.0004, 0.0005, 0.0009, 0.003, 0.0078}).Draw(t, "off")
	if rapid.Bool().Draw(t, "anywhere") {
		return rapid.Float64Range(-40, 40).Draw(t, "length")
	}
	return mark + rapid.SampledFrom([]float64{-1, 1}).Draw(t, "side")*off
}

// TestNoFractionDiffersUnsaid checks of any length that the fraction printed, with how far
// it is said to be off, is the length, and that the nearest of the denominator is taken.
func TestNoFractionDiffersUnsaid(t *testing.T) {
	const digit = 0.0005 + 1e-9 // half of the last digit that is written
	rapid.Check(t, func(t *rapid.T) {
		x := lengths(t)
		of := rapid.SampledFrom([]int{16, 32, 64}).Draw(t, "denominator")
		text := Plain((Style{Units: Inch, Fraction: of}).LengthNumber(Inch.Millimetres(x)))
		_, beside, ok := strings.Cut(strings.TrimSuffix(text, ")"), " (")
		if !ok {
			if whole := math.Abs(x-math.Round(x)) <= digit; !whole && math.Abs(x) > 0.5/float64(of) {
				t.Fatalf("%g in has no fraction: %s", x, text)
			}
			return
		}
		part, off, said := beside, 0.0, false
		for word, sign := range map[string]float64{" plus ": 1, " less ": -1} {
			if f, by, ok := strings.Cut(beside, word); ok {
				d, _ := parseDecimal(by)
				part, off, said = f, sign*d, true
			}
		}
		f, ok := parseNumber(part)
		if !ok || !(math.Abs(f+off-x) <= digit) {
			t.Fatalf("%g in is written %q", x, text)
		}
		if said && (off == 0 || math.Abs(f-x) > 0.5/float64(of)+1e-9) {
			t.Fatalf("%g in is written %q, which is not the nearest", x, text)
		}
	})
}

// TestSameDigitsInEveryUnit checks that a length of a rule is written alike whether its
// file is in mm or in inches.
func TestSameDigitsInEveryUnit(t *testing.T) {
	for parts := -3 * 64; parts <= 3*64; parts++ {
		x := float64(parts) / 64
		s := Style{Units: Inch, Fraction: 32}
		direct := Decimal(x, inchDecimals)
		byMM := s.LengthDecimal(float64(parts) * 25.4 / 64)
		if direct != byMM {
			t.Errorf("%d/64 in is %s of a file in inches, %s of one in mm", parts, direct, byMM)
		}
	}
}

// TestLengthsComeBack checks that what a style writes is read again as the same length: a
// fraction as itself, anything else to the last decimal written.
func TestLengthsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := Inch.Millimetres(lengths(t))
		for _, s := range []Style{{}, {Units: Inch}, {Units: Inch, Fraction: 16}, {Units: Inch, Fraction: 64}} {
			for _, text := range []string{s.Length(mm), s.LengthNumber(mm), Plain(s.Length(mm))} {
				got, err := s.ParseLength(text)
				if err != nil || !(math.Abs(got-mm) <= 0.0129) { // half of 0.001 in
					t.Fatalf("%g mm is written %q and read as %g, %v", mm, text, got, err)
				}
			}
		}
	})
	for parts := 1; parts < 256; parts++ {
		s := Style{Units: Inch, Fraction: 32}
		want := Inch.Millimetres(float64(parts) / 64)
		if got, err := s.ParseLength(s.Length(want)); got != want {
			t.Errorf("%d/64 in, written %q, is read as %g mm, %v, want %g", parts, s.Length(want), got, err, want)
		}
	}
}
