package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"toewright/internal/study"
)

// newPointsCommand returns the command that puts the points of a table into a study.
func newPointsCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "points FILE TABLE",
		Short: "Put the points of a table (CSV) into a study",
		Long: `Print the study with its hardpoints where a table has them: columns point, x, y, z and if wanted
side, as spreadsheets save them, in the study's units or in those stated above a column, "x (in)".

A table from a measuring arm or a drawing has axes of its own. Where it has three or more rows named as
marks of the study (measured.marks), not in one line, it is turned and moved by least squares so that
they stand where the study has them; how far each is off then is told. So is what looks like a slip.`,
		Args:              usage(cobra.ExactArgs(2)),
		ValidArgsFunction: completeParts,
		RunE: func(cmd *cobra.Command, args []string) error {
			d, err := readStudy(args[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			text, err := readInput(args[1], cmd.InOrStdin(), maxTable)
			if err != nil {
				return err
			}
			t, err := study.ParsePoints(text, d)
			if err != nil {
				return fmt.Errorf("%s: %w", args[1], err)
			}
			if t.Datum != nil {
				fmt.Fprintln(cmd.ErrOrStderr(), "turned and moved so that its marks stand where the study has them; off by "+offBy(d, t.Datum))
			}
			out := d.Clone()
			for _, p := range t.Points() {
				if err := out.SetPoint(p); err != nil {
					return err
				}
			}
			out.Attribute(d, study.FromFile)
			for _, p := range t.Points() {
				out.SetSource(out.SourcePath(p), study.FromFile)
			}
			if d.Suspension.Right == nil && out.Suspension.Right != nil {
				fmt.Fprintln(cmd.ErrOrStderr(), "the right side was the mirror image and now has points of its own")
			}
			before := study.Check(d)
			for _, f := range study.Check(out) {
				if f.Severity == study.Warning && !slices.Contains(before, f) {
					fmt.Fprintf(cmd.ErrOrStderr(), "%s: %s; %s\n", f.Path, f.Message, f.Suggestion)
				}
			}
			return printStudy(cmd, out)
		},
	}
}

// maxTable is far more than any table of points takes.
const maxTable = 1 << 20

// offBy lists how far marks are off.
func offBy(d *study.Document, t *study.Datum) string {
	list := make([]string, len(t.Common))
	for i, c := range t.Common {
		list[i] = fmt.Sprintf("%s %.3f %s", c.Name, c.Off, d.Units)
	}
	return strings.Join(list, ", ")
}
