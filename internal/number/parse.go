package number

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// largest is the largest size of a number that is read: far above any car, and low enough
// that nothing computed from it overflows.
const largest = 1e9

// ParseLength reads a length as people type it and returns it in u: "12.7", "12,7",
// "-1/16", "3 1/32", "3-1/32", "½", and sums such as "9.7 - 1/8", each with or without "mm",
// "cm", "in" or an inch mark behind it; and as a [Style] writes it, "0.266 in (17/64)". Without a unit the number is
// in u. A lone comma is a decimal comma.
func ParseLength(text string, u Units) (float64, error) {
	decimals, fraction := cutFraction(text)
	number, unit := cutUnit(strings.TrimSpace(decimals), u)
	x, ok := parseSum(number)
	if ok && fraction != "" {
		x, ok = withFraction(x, fraction)
	}
	if !ok || !(math.Abs(x) <= largest) {
		return 0, fmt.Errorf("%q is not a length; type a number like %s", Clip(text), example(u))
	}
	return unit.convert(x, u), nil
}

// example returns a length as it may be typed.
func example(u Units) string {
	if u == Inch {
		return "0.5, 1/2 or 12.7 mm"
	}
	return "12.7, or 1/2 in"
}

// Clip shortens a text that is quoted in a message.
func Clip(text string) string {
	const most = 24
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}

// cutFraction splits off what stands in brackets behind a length.
func cutFraction(text string) (decimals, fraction string) {
	before, ok := strings.CutSuffix(strings.TrimSpace(text), ")")
	decimals, fraction, found := strings.Cut(before, "(")
	if !ok || !found {
		return text, ""
	}
	return decimals, fraction
}

// withFraction returns the length of which x are the decimals and the fraction stands
// beside it: the fraction itself, unless it is said how far off the length is. It is
// refused where the two do not agree.
func withFraction(x float64, fraction string) (float64, bool) {
	part, off, by := fraction, "", 0.0
	for word, sign := range map[string]float64{" plus ": 1, " less ": -1} {
		if before, after, ok := strings.Cut(fraction, word); ok {
			part, off, by = before, after, sign
		}
	}
	f, ok := parseNumber(part)
	if off == "" {
		return f, ok && math.Abs(f-x) < agreeing
	}
	d, ok2 := parseDecimal(off)
	return x, ok && ok2 && math.Abs(f+by*d-x) < agreeing
}

// agreeing is what decimals and the fraction beside them differ by at most: the roundings
// of two texts to the third decimal.
const agreeing = 0.0011

// ParseDegrees reads an angle in degrees, with or without the sign for it. A lone comma is
// a decimal comma.
func ParseDegrees(text string) (float64, error) {
	number := strings.TrimSpace(text)
	for _, unit := range []string{"degrees", "deg", "°"} {
		number = strings.TrimSpace(strings.TrimSuffix(number, unit))
	}
	x, ok := ParsePlain(number)
	if !ok {
		return 0, fmt.Errorf("%q is not an angle; type an angle in degrees, like 0.15", Clip(text))
	}
	return x, nil
}

// ParsePlain reads a number without a unit.
func ParsePlain(text string) (float64, bool) {
	x, ok := parseNumber(text)
	return x, ok && math.Abs(x) <= largest
}

// ParseLength reads a length and returns it in mm. A number without a unit is in the units
// shown.
func (s Style) ParseLength(text string) (float64, error) {
	x, err := ParseLength(text, s.Units)
	return s.Units.Millimetres(x), err
}

// ParseToe reads a toe in the unit that toe is shown in and returns it in degrees.
func (s Style) ParseToe(text string) (float64, error) {
	if s.Gauge == Degrees {
		return ParseDegrees(text)
	}
	x, err := ParseLength(text, s.Units)
	if err != nil {
		return 0, err
	}
	deg := s.ToeRead(x)
	if math.IsNaN(deg) {
		return 0, fmt.Errorf("%s is more than the base of %s", s.Length(s.Units.Millimetres(x)), s.Travel(s.Base))
	}
	return deg, nil
}

// lengthUnit is a unit that may stand behind a typed length.
type lengthUnit struct {
	suffix string
	units  Units
	times  float64 // times is how many of units it is.
}

// lengthUnits are tried in order, so a longer suffix stands before its ending.
var lengthUnits = []lengthUnit{
	{"mm", Millimetre, 1},
	{"cm", Millimetre, 10},
	{"inches", Inch, 1},
	{"inch", Inch, 1},
	{"in.", Inch, 1},
	{"in", Inch, 1},
	{`"`, Inch, 1},
	{"″", Inch, 1},
	{"”", Inch, 1},
	{"''", Inch, 1},
}

// convert returns x of l in u.
func (l lengthUnit) convert(x float64, u Units) float64 { return l.units.Convert(x*l.times, u) }

// cutUnit splits the unit off a text; without one it is u.
func cutUnit(text string, u Units) (string, lengthUnit) {
	lower := strings.ToLower(text)
	for _, l := range lengthUnits {
		if number, ok := strings.CutSuffix(lower, l.suffix); ok {
			return strings.TrimSpace(number), l
		}
	}
	return lower, lengthUnit{"", u, 1}
}

// signs and fractions as keyboards write them.
var plainSigns = strings.NewReplacer("−", "-", "–", "-", "½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/", "\u00a0", " ", "\u202f", " ")

// parseSum reads numbers with a sign between each two: "9.7 - 1/8", "27+3/16". A minus sign
// has spaces about it there, for without them it parts a whole number from its fraction.
func parseSum(text string) (float64, bool) {
	text = strings.TrimSpace(plainSigns.Replace(text))
	for i := len(text) - 2; i > 0; i-- {
		minus := strings.HasPrefix(text[i-1:], " - ")
		if text[i] != '+' && !minus {
			continue
		}
		before, ok := parseSum(text[:i])
		term := strings.TrimSpace(text[i+1:])
		x, ok2 := parseNumber(term)
		if minus {
			x = -x
		}
		return before + x, ok && ok2 && !strings.ContainsAny(term[:1], "+-")
	}
	return parseNumber(text)
}

// parseNumber reads a decimal, a fraction, or a whole number with a fraction.
func parseNumber(text string) (float64, bool) {
	text = strings.TrimSpace(plainSigns.Replace(text))
	sign := 1.0
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		sign, text = -1, strings.TrimSpace(rest)
	} else if rest, ok := strings.CutPrefix(text, "+"); ok {
		text = strings.TrimSpace(rest)
	}
	x, ok := parseDecimal(text)
	if !ok {
		x, ok = parseMixed(text)
	}
	return sign * x, ok
}

// parseDecimal reads digits with at most one point or comma, and no sign.
func parseDecimal(text string) (float64, bool) {
	if strings.Count(text, ",") == 1 && !strings.Contains(text, ".") {
		text = strings.Replace(text, ",", ".", 1)
	}
	if strings.Trim(text, "0123456789.") != "" || text == "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	return x, err == nil
}

// parseMixed reads "1/16", "3 1/32" or "3-1/32".
func parseMixed(text string) (float64, bool) {
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' })
	switch len(fields) {
	case 1:
		return parseFraction(fields[0])
	case 2:
		whole, ok := parseWhole(fields[0])
		part, ok2 := parseFraction(fields[1])
		return whole + part, ok && ok2
	}
	return 0, false
}

// parseFraction reads two whole numbers with a stroke between them.
func parseFraction(text string) (float64, bool) {
	above, below, ok := strings.Cut(text, "/")
	n, ok1 := parseWhole(above)
	d, ok2 := parseWhole(below)
	return n / d, ok && ok1 && ok2 && d > 0
}

// parseWhole reads digits only.
func parseWhole(text string) (float64, bool) {
	n, err := strconv.ParseUint(text, 10, 32)
	return float64(n), err == nil
}
