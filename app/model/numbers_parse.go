package model

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// ParseLength reads a length as people type it, "12.7", "−1/16", "3 1/32 in", and
// returns it in mm. A number without a unit is in the units shown.
func (n Numbers) ParseLength(text string) (float64, error) {
	mm, err := study.ParseLength(text, n.Units)
	if err != nil {
		return 0, fmt.Errorf("%q is no length; type a number like %s", clip(text), n.example())
	}
	return n.Units.Millimetres(mm), nil
}

// example returns a length as it may be typed.
func (n Numbers) example() string {
	if n.Units == study.Inch {
		return "0.5, 1/2 or 12.7 mm"
	}
	return "12.7, or 1/2 in"
}

// errNotDegrees is what a field says that has no angle in it.
var errNotDegrees = errors.New("type an angle in degrees, like 0.15")

// ParseDegrees reads an angle in degrees, with or without the sign for it. A lone
// comma is a decimal comma.
func ParseDegrees(text string) (float64, error) {
	text = strings.TrimSpace(text)
	for _, unit := range []string{"degrees", "deg", "°"} {
		text = strings.TrimSpace(strings.TrimSuffix(text, unit))
	}
	x, ok := parsePlain(text)
	if !ok {
		return 0, fmt.Errorf("%q is no angle; %w", clip(text), errNotDegrees)
	}
	return x, nil
}

// ParseToe reads a toe in the unit that toe is shown in.
func (n Numbers) ParseToe(text string) (solver.Angle, error) {
	if n.Toe == ToeDegrees {
		x, err := ParseDegrees(text)
		return solver.Deg(x), err
	}
	mm, err := n.ParseLength(text)
	if err != nil {
		return 0, err
	}
	a := n.ToeOf(n.Units.FromMillimetres(mm))
	if math.IsNaN(a.Radians()) {
		return 0, fmt.Errorf("%s is more than the base of %s", n.Length(mm), n.Travel(n.Base))
	}
	return a, nil
}

// parsePlain reads a finite decimal number. A lone comma is a decimal comma, and
// both kinds of minus sign are one.
func parsePlain(text string) (float64, bool) {
	text = strings.ReplaceAll(strings.TrimSpace(text), "−", "-")
	if strings.Count(text, ",") == 1 && !strings.Contains(text, ".") {
		text = strings.Replace(text, ",", ".", 1)
	}
	if strings.Trim(text, "+-.0123456789") != "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	return x, err == nil
}

// clip shortens a text that is quoted in a message.
func clip(text string) string {
	const most = 24
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}
