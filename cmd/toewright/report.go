package main

import (
	"fmt"
	"io"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// report collects what is printed for people, so that nothing is printed of an
// answer that fails half way.
type report struct {
	scale
	study *study.Document
	text  strings.Builder
}

func newReport(d *study.Document) *report {
	r := &report{scale: newScale(d), study: d}
	if d.Name != "" {
		r.line("%s", oneLine(d.Name))
	}
	if b := r.Basis(); b != "" {
		r.line("%s", b)
	}
	return r
}

func (r *report) line(format string, args ...any) { fmt.Fprintf(&r.text, format+"\n", args...) }

// sentence prints a text over as many lines as it takes.
func (r *report) sentence(text string) {
	r.line("%s", wrap(oneLine(text), sentenceWidth, sentenceIndent))
}

// heading starts a part.
func (r *report) heading(format string, args ...any) {
	if r.text.Len() > 0 {
		r.line("")
	}
	r.line(format, args...)
}

func (r *report) table(t *table) { r.text.WriteString(t.String()) }

// cautions ends a report.
func (r *report) cautions() {
	r.line("")
	for _, c := range engine.Cautions {
		r.line("%s", c)
	}
}

func (r *report) writeTo(w io.Writer) error {
	_, err := io.WriteString(w, r.text.String())
	return err
}

// oneLine returns a text of the study without what would move a terminal's cursor.
func oneLine(text string) string {
	return strings.Map(func(c rune) rune {
		if c < ' ' || c >= 0x7f && c < 0xa0 {
			return ' '
		}
		return c
	}, text)
}
