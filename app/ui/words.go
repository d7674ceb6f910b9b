package ui

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"toewright/internal/engine"
	"toewright/internal/strictjson"
	"toewright/internal/study"
	"toewright/solver"
)

// plain returns an error's text in the words of the page, without the names of our
// packages, which say nothing to the user.
func plain(err error) string {
	var file *strictjson.Error
	var cell *study.CSVError
	switch {
	case errors.As(err, &cell): // what stands in the cells and above them is as it was typed
		said := *cell
		said.Message = study.Spoken(cell.Message)
		return said.Error()
	case errors.As(err, &file) && file.Line == 0: // a place in a file that nobody sees says nothing
		return strings.TrimPrefix(study.SpokenPath(file.Path)+": "+study.Spoken(file.Message), ": ")
	case file != nil: // in a file that somebody has, its own keys lead to the place
		return strings.TrimPrefix(file.Path+": "+file.Message, ": ")
	}
	text := study.Spoken(err.Error())
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
