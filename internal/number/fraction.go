package number

import (
	"math"
	"strconv"
)

// finest is the denominator of the finest fraction of an inch that is written: that of
// drills and good rules.
const finest = 64

// mostParts is the largest count of parts that is exact in a float64.
const mostParts = 1 << 53

// Fraction returns x rounded to whole and denominator-ths and reduced, as "−1 3/16",
// the way a rule in inches is read. The denominator is a power of two. What there is not,
// or is too large to have a fraction, is as in [Decimal].
func Fraction(x float64, denominator int) string {
	parts := math.Floor(math.Abs(x)*float64(denominator) + 0.5)
	if !(parts < mostParts) {
		return Decimal(x, 0)
	}
	return signBefore(x, mixed(int64(parts), int64(denominator)))
}

// mixed writes n/d, not negative, as a whole number and a reduced fraction.
func mixed(n, d int64) string {
	whole, rest := n/d, n%d
	for rest > 0 && rest%2 == 0 && d%2 == 0 {
		rest, d = rest/2, d/2
	}
	part := strconv.FormatInt(rest, 10) + "/" + strconv.FormatInt(d, 10)
	switch {
	case rest == 0:
		return strconv.FormatInt(whole, 10)
	case whole == 0:
		return part
	}
	return strconv.FormatInt(whole, 10) + " " + part
}

// besides returns what stands beside the decimals of a length in inches: the fraction
// that it is, "17/64"; else the nearest one of the denominator and how far the length is
// from it, "9/32 less 0.006". A finer fraction, down to 1/64, is shown where the length
// is just that. It is empty where the fraction would be 0, and where the length is a
// whole number, which its decimals say already.
func besides(inches float64, denominator int) string {
	x := settled(math.Abs(inches))
	if !(x < mostParts/finest) {
		return ""
	}
	for d := denominator; d <= finest; d *= 2 {
		parts := math.Round(x * float64(d))
		if f := parts / float64(d); parts > 0 && same(x, f) {
			if f == math.Floor(f) {
				return ""
			}
			return Fraction(math.Copysign(f, inches), d)
		}
	}
	f := math.Round(x*float64(denominator)) / float64(denominator)
	if f == 0 {
		return ""
	}
	return Fraction(math.Copysign(f, inches), denominator) + " " + offBy(math.Copysign(x-f, inches*(x-f)))
}

// Below offBy's last decimal a length is the fraction beside it. One that is no further
// than half of its own last decimal is so too if both are written with the same decimals.
const (
	nothing  = 0.00005
	halfLast = 0.0005
)

// same reports whether a length is a fraction, to the third decimal that is written.
func same(x, f float64) bool {
	off := math.Abs(x - f)
	return off < nothing || off < halfLast && magnitude(x, inchDecimals) == magnitude(f, inchDecimals)
}

// offBy says how far a length is from the fraction beside it.
func offBy(by float64) string {
	word := "plus "
	if by < 0 {
		word = "less "
	}
	if math.Abs(by) < halfLast {
		return word + magnitude(by, inchDecimals+1)
	}
	return word + magnitude(by, inchDecimals)
}
