package main

import (
	"encoding/json"
	"io"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"toewright/internal/study"
)

// answering is how an answer is printed.
type answering struct {
	json bool
	showing
}

func (a *answering) addFlags(fs *pflag.FlagSet) {
	fs.BoolVar(&a.json, "json", false, "print the whole answer as JSON, in the file's units and degrees")
	a.showing.addFlags(fs)
}

// of returns the study as the answer is to show it.
func (a *answering) of(cmd *cobra.Command, d *study.Document) (*study.Document, error) {
	shown, err := a.over(d)
	if err != nil {
		return nil, &usageError{cmd.CommandPath(), err}
	}
	return shown, nil
}

// print prints an answer about a study as JSON, or as show does for people.
func (a *answering) print(cmd *cobra.Command, d *study.Document, answer any, show func(*report)) error {
	if a.json {
		return writeJSON(cmd.OutOrStdout(), answer)
	}
	r := newReport(d)
	show(r)
	r.cautions()
	return r.writeTo(cmd.OutOrStdout())
}

// writeJSON writes an answer as one line of JSON.
func writeJSON(w io.Writer, answer any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(answer)
}
