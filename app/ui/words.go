package ui

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"toewright/internal/engine"
	"toewright/internal/strictjson"
	"toewright/solver"
)

// plain returns an error's text without the names of our packages, which say nothing
// to the user.
func plain(err error) string {
	text := err.Error()
	var e *strictjson.Error
	if errors.As(err, &e) {
		text = strings.TrimPrefix(e.Path+": "+e.Message, ": ") // a place in a file that nobody sees says nothing
	}
	for _, name := range []string{"model: ", "solver: ", "optimize: ", "study: ", "wasm: ", "store: "} {
		text = strings.TrimPrefix(text, name)
	}
	return text
}

// sentence returns a text as a sentence.
func sentence(text string) string {
	r, size := utf8.DecodeRuneInString(text)
	text = string(unicode.ToUpper(r)) + text[size:]
	if strings.ContainsAny(text[len(text)-1:], ".?") {
		return text
	}
	return text + "."
}

// inFile returns the text of an error about a file, with the place in it.
func inFile(err error) string {
	var e *strictjson.Error
	if errors.As(err, &e) && e.Line > 0 {
		return fmt.Sprintf("line %d, column %d: %s", e.Line, e.Column, plain(err))
	}
	return plain(err)
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
