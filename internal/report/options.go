package report

import (
	"fmt"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Options say of which candidate the sheet is, and how it is printed. The zero value
// takes what the study says.
type Options struct {
	// Candidate is whose sheet it is: where empty, the study's first that is not
	// hidden, else the base car.
	Candidate string `json:"candidate,omitzero"`
	// Yardstick is the car that it is compared with: where empty, that of the study's
	// display, else the base car. Arms are always measured from the base car's.
	Yardstick string `json:"yardstick,omitzero"`
	Date      string `json:"date,omitzero"`  // in place of the study's, as it is to be printed
	Form      string `json:"form,omitzero"`  // one of [Forms]; the bench sheet where empty
	Paper     Paper  `json:"paper,omitzero"` // where empty, Letter for a study shown in inches, else A4
	Cars      *int   `json:"cars,omitzero"`  // of the tolerance's series and of the fit, in place of the study's

	// Base is that of the gauge by which a card is checked, in the file's units; nil is that
	// of the study's display.
	Base *float64 `json:"base,omitzero"`

	Version  string                `json:"-"` // of the program, as the sheet states it
	Progress func(engine.Progress) `json:"-"` // of the tolerance's series
}

// Paper is the size of the printed page.
type Paper string

// The papers.
const (
	A4     Paper = "a4"
	Letter Paper = "letter"
)

// Papers lists the papers.
var Papers = []string{string(A4), string(Letter)}

// choose returns p, or where it is empty what suits a study. The error names the
// papers.
func (p Paper) choose(shown study.Units) (Paper, error) {
	switch {
	case p == A4, p == Letter:
		return p, nil
	case p != "":
		return "", &engine.Error{Key: "paper", Message: fmt.Sprintf("%.40q is none of %s", string(p), strings.Join(Papers, ", "))}
	case shown == study.Inch:
		return Letter, nil
	}
	return A4, nil
}

// candidate returns whose sheet it is.
func (o *Options) candidate(d *study.Document) string {
	if o.Candidate != "" {
		return o.Candidate
	}
	for i := range d.Candidates {
		if !d.Candidates[i].Hidden {
			return d.Candidates[i].Name
		}
	}
	return study.BaseName
}
