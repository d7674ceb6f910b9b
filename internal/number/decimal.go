package number

import (
	"math"
	"strconv"
	"strings"
)

// minus is the sign that is as wide as a digit and that screen readers say.
const minus = "−"

// gap stands for a number that there is not.
const gap = "–"

// Decimal returns x with so many decimals and a real minus sign; what rounds to zero has
// no sign. A number that there is not, or that is infinite, is an en dash.
func Decimal(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return gap
	}
	return signBefore(x, magnitude(x, decimals))
}

// signBefore writes the minus sign of x before a text, unless that is all zeros.
func signBefore(x float64, text string) string {
	if x < 0 && strings.ContainsAny(text, "123456789") {
		return minus + text
	}
	return text
}

// grains are the parts of a unit below which there is but the noise of a conversion
// between units, far under the last decimal that is written: so 1/16 in of a file in
// millimetres and of one in inches end in the same digits.
const grains = 1e9

// settled returns x without that noise.
func settled(x float64) float64 {
	if !(math.Abs(x) < mostParts/grains) { // one bit is more than a grain
		return x
	}
	return math.Round(x*grains) / grains
}

// magnitude writes the size of x.
func magnitude(x float64, decimals int) string {
	return strconv.FormatFloat(settled(math.Abs(x)), 'f', decimals, 64)
}

// Trimmed returns x with at most so many decimals, and no zeros at their end.
func Trimmed(x float64, decimals int) string {
	text := Decimal(x, decimals)
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// Signed returns a number's text with a plus where the number is above zero, unless it is
// written as zero.
func Signed(x float64, text string) string {
	if x > 0 && strings.ContainsAny(text, "123456789") {
		return "+" + text
	}
	return text
}

// Plain returns a text with the signs of a keyboard, as terminals and scripts want them.
func Plain(text string) string { return keyboard.Replace(text) }

var keyboard = strings.NewReplacer(minus, "-", gap, "-")
