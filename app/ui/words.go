package ui

import (
	"errors"
	"strings"
	"unicode"

	"toewright/internal/engine"
	"toewright/solver"
)

// plain returns an error's text without the names of our packages, which say nothing
// to the user.
func plain(err error) string {
	text := err.Error()
	for _, name := range []string{"model: ", "solver: ", "optimize: ", "study: ", "wasm: ", "store: "} {
		text = strings.TrimPrefix(text, name)
	}
	return text
}

// errBase is what a gauge without a length is refused with.
var errBase = errors.New("a gauge's base must be longer than 0")

// degrees returns a figure of package engine as an angle.
func degrees(x engine.Number) solver.Angle { return solver.Deg(float64(x)) }

// fileName returns a name that every system takes as that of a file.
func fileName(name string) string {
	clean := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '.' {
			return r
		}
		return '-'
	}, name)
	if clean = strings.Trim(clean, "-."); clean == "" {
		return "study"
	}
	return clean
}
