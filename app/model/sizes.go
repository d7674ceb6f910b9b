package model

import (
	"fmt"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// SetSizes states the only values that the shop has of a free parameter, in file units
// or degrees, in place of a step; none takes the list away.
func (s *Session) SetSizes(key string, sizes []float64) error {
	return s.EditSearch("sizes of "+key, "", func(f *study.Search) {
		for i := range f.Variables {
			if v := &f.Variables[i]; v.Parameter == key {
				v.Sizes = sizes
				if len(sizes) > 0 {
					v.Grid = 0
				}
			}
		}
	})
}

// SizesText writes sizes of a parameter, in file units or degrees, as ParseSizes reads
// them: with all the decimals that they have, or as fractions that are exact.
func (n Numbers) SizesText(d *study.Document, p solver.Parameter, sizes []float64) string {
	var list []string
	for _, x := range sizes {
		if p.Quantity != solver.AngleQuantity {
			x = n.Units.FromMillimetres(d.Units.Millimetres(x))
		}
		list = append(list, n.Exact(x, p.Quantity != solver.AngleQuantity))
	}
	return strings.Join(list, ", ")
}

// ParseSizes reads sizes of a parameter within the bounds of a variable, with blanks or
// commas between them, and returns them in file units or degrees; none of an empty text.
// A whole number and a fraction after it are one size, and so are a number and its unit.
func (n Numbers) ParseSizes(d *study.Document, p solver.Parameter, v *study.Variable, text string) ([]float64, error) {
	var sizes []float64
	if one := strings.TrimSpace(text); decimalComma(one) {
		return nil, fmt.Errorf("%q may be one size or two: write %s or %s", number.Clip(one),
			strings.Replace(one, ",", ".", 1), strings.Replace(one, ",", ", ", 1))
	}
	for _, word := range splitSizes(text) {
		x, err := n.ParseValue(d, p, word)
		if err != nil {
			return nil, err
		}
		sizes = append(sizes, x)
	}
	if len(sizes) > 0 && !slices.ContainsFunc(sizes, func(x float64) bool { return x >= v.Min && x <= v.Max }) {
		return nil, fmt.Errorf("no size lies within the bounds, %s to %s %s: widen them, or type another",
			n.ValueNumber(d, p, v.Min), n.ValueNumber(d, p, v.Max), n.ValueUnit(p))
	}
	return sizes, nil
}

// splitSizes splits a text into its numbers.
func splitSizes(text string) []string {
	var list []string
	goesOn := false // nothing has ended the last number
	for _, word := range strings.Fields(strings.ReplaceAll(text, ";", ", ")) {
		inner := strings.Trim(word, ",")
		goesOn = goesOn && word[0] != ','
		pieces := []string{inner}
		if !decimalComma(inner) {
			pieces = strings.FieldsFunc(inner, func(r rune) bool { return r == ',' })
		}
		for _, piece := range pieces {
			switch {
			case piece == "":
			case goesOn && continues(list[len(list)-1], piece):
				list[len(list)-1] += " " + piece
			default:
				list = append(list, piece)
			}
			goesOn = piece != "" && len(pieces) == 1
		}
		goesOn = goesOn && word[len(word)-1] != ','
	}
	return list
}

// continues reports whether a word belongs to the number before it: a unit, or the
// fraction of a whole number.
func continues(number, word string) bool {
	if !strings.ContainsAny(word, "0123456789½¼¾⅛⅜⅝⅞") {
		return true
	}
	whole := strings.Trim(strings.TrimLeft(number, "+-−–"), "0123456789") == ""
	return whole && strings.ContainsAny(word, "/⁄½¼¾⅛⅜⅝⅞") && !strings.ContainsAny(word[:1], "+-")
}

// decimalComma reports whether a text may be one number with a decimal comma.
func decimalComma(text string) bool {
	before, after, ok := strings.Cut(text, ",")
	digits := func(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
	return ok && digits(strings.TrimLeft(before, "+-−–")) &&
		digits(strings.TrimRightFunc(after, func(r rune) bool { return r < '0' || r > '9' }))
}
