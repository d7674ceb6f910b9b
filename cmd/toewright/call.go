package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"toewright/internal/study"
)

// call is a command that asks one question about a study.
type call[R any] struct {
	ask  func(context.Context, *study.Document) (R, error)
	show func(*report, R) // prints the answer for people
}

// setUp makes cmd read a study, ask and print.
func (c call[R]) setUp(cmd *cobra.Command) *cobra.Command {
	var asJSON bool
	var shown showing
	cmd.Args = usage(oneFile)
	cmd.ValidArgsFunction = completeStudy
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		answer, err := c.ask(cmd.Context(), d)
		if err != nil {
			return err
		}
		if asJSON {
			return writeJSON(cmd.OutOrStdout(), answer)
		}
		r, err := newReport(d, shown)
		if err != nil {
			return &usageError{cmd.CommandPath(), err}
		}
		c.show(r, answer)
		r.cautions()
		return r.writeTo(cmd.OutOrStdout())
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the whole answer as JSON, in the file's units and degrees")
	shown.addFlags(cmd.Flags())
	return cmd
}

// writeJSON writes an answer as one line of JSON.
func writeJSON(w io.Writer, answer any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(answer)
}

// oneFile refuses anything but one FILE.
func oneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("want one study FILE, or - for standard input, got %d", len(args))
	}
	return nil
}
