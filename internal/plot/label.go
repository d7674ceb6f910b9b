package plot

import (
	"math"
	"strconv"
	"strings"
)

// minus is the sign that is as wide as a digit and that screen readers say.
const minus = "−"

// Decimal returns v with a fixed number of decimals and a real minus sign; what
// rounds to zero has no sign. A gap is an en dash.
func Decimal(v float64, decimals int) string {
	if !finite(v) {
		return "–"
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	if v < 0 && !isZero(text) {
		return minus + text
	}
	return text
}

// Signed returns a number's text with a plus where the number is above zero, unless it is
// written as zero.
func Signed(v float64, text string) string {
	if v > 0 && strings.ContainsAny(text, "123456789") {
		return "+" + text
	}
	return text
}

// isZero reports whether a formatted number has no digit but 0.
func isZero(text string) bool {
	for _, r := range text {
		if r != '0' && r != '.' {
			return false
		}
	}
	return true
}

// Fraction returns v rounded to whole and denominator-ths and reduced, as "−1 3/16",
// the way a rule in inches is read. The denominator is a power of two. A gap, or a
// value too large to have a fraction, is as in [Decimal].
func Fraction(v float64, denominator int) string {
	parts := math.Floor(math.Abs(v)*float64(denominator) + 0.5)
	if !(parts < maxIndex) {
		return Decimal(v, 0)
	}
	text := mixedNumber(int64(parts), int64(denominator))
	if v < 0 && parts > 0 {
		return minus + text
	}
	return text
}

// mixedNumber writes n/d, not negative, as a whole number and a reduced fraction.
func mixedNumber(n, d int64) string {
	whole, rest := n/d, n%d
	for rest > 0 && rest%2 == 0 && d%2 == 0 {
		rest, d = rest/2, d/2
	}
	switch {
	case rest == 0:
		return strconv.FormatInt(whole, 10)
	case whole == 0:
		return fraction(rest, d)
	}
	return strconv.FormatInt(whole, 10) + " " + fraction(rest, d)
}

func fraction(n, d int64) string { return strconv.FormatInt(n, 10) + "/" + strconv.FormatInt(d, 10) }
