package study

import (
	"fmt"
	"math"
	"strconv"
)

// FormatLength writes a length, in u, with its unit: millimetres to 0.01,
// inches to 0.001 or, if fraction is set, to the nearest 1/32 where that is not 0.
func FormatLength(x float64, u Units, fraction bool) string {
	switch {
	case u != Inch:
		return fixed(x, 2) + " mm"
	case fraction && (x == 0 || math.Round(math.Abs(x)*thirtySeconds) > 0):
		return FormatFraction(x) + " in"
	}
	return fixed(x, 3) + " in"
}

// fixed writes a number with so many decimals, and never "-0.00".
func fixed(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if zero := strconv.FormatFloat(0, 'f', decimals, 64); text == "-"+zero {
		return zero
	}
	return text
}

// thirtySeconds is the denominator of the smallest mark on a workshop rule.
const thirtySeconds = 32

// FormatFraction writes a length in inches to the nearest 1/32, reduced: 3.53 is
// "3 17/32", -0.0625 is "-1/16". A half mark rounds away from 0. It writes NaN and
// the infinities as Go does.
func FormatFraction(inches float64) string {
	marks := math.Round(math.Abs(inches) * thirtySeconds)
	if !(marks < 1<<53) { // beyond it, or NaN, there are no thirty-seconds
		return strconv.FormatFloat(inches, 'g', -1, 64)
	}
	sign := ""
	if inches < 0 && marks > 0 {
		sign = "-"
	}
	whole, part, below := int64(marks)/thirtySeconds, int64(marks)%thirtySeconds, int64(thirtySeconds)
	for part != 0 && part%2 == 0 {
		part, below = part/2, below/2
	}
	switch {
	case part == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, part, below)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, part, below)
}
