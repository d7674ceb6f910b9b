package study

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ParseLength reads a length as people type it and returns it in u: "12.7",
// "12,7", "-1/16", "3 1/32", "3-1/32", "½", each with or without "mm", "cm", "in"
// or an inch mark behind it. Without a unit the number is in u. A lone comma is a
// decimal comma.
func ParseLength(text string, u Units) (float64, error) {
	number, unit := cutUnit(strings.TrimSpace(text), u)
	x, ok := parseNumber(number)
	if !ok || !(math.Abs(x) <= limits.Magnitude) {
		return 0, fmt.Errorf("study: %.40q is no length, want a number like 12.7, 3 1/32 or 3.5 in", text)
	}
	return unit.convert(x, u), nil
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
