package main

import (
	"fmt"
	"io"
	"maps"
	"slices"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// formMeasures is how many measures a form has where nothing else is said: an hour's, and a page.
const formMeasures = 40

// newFormCommand returns the command that prints a form to measure a car by.
func newFormCommand() *cobra.Command {
	most := formMeasures
	cmd := &cobra.Command{
		Use:   "form FILE",
		Short: "Print a form to measure a car by tape, in the order in which each measure helps most",
		Long: `Print the measures to take of a study's car, each with a blank, in the order in which each settles
the toe curve most: lengths from the study's marks, direct lengths, heights, plumbed distances. Where
the toe is known well enough to choose a spacer a line says so. What cannot be reached is left blank.
A study without marks gets six on the left, as docs/tape.md sets them. How to measure is there too.`,
		Args:              usage(oneFile),
		ValidArgsFunction: completeParts,
		RunE: func(cmd *cobra.Command, args []string) error {
			d, err := readStudy(args[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			d = withMarks(d)
			list, err := engine.TapeForm(cmd.Context(), d, most)
			if err != nil {
				return err
			}
			return printForm(cmd.OutOrStdout(), d, list)
		},
	}
	cmd.Flags().IntVar(&most, "measures", most, "most `number` of measures")
	return completeOptions(cmd)
}

// withMarks returns a study that has marks: its own, or those of the guide.
func withMarks(d *study.Document) *study.Document {
	if d.Measured != nil && len(d.Measured.Marks) > 0 {
		return d
	}
	d = d.Clone()
	d.SetSixMarks()
	return d
}

// printForm prints blanks for the marks and for each measure.
func printForm(w io.Writer, d *study.Document, list []engine.FormMeasure) error {
	const blank = "____________"
	fmt.Fprintf(w, "%s: by tape, in %s\n\nMeasured by %s  date %s\nTyre pressures %s  ride height %s  fuel and ballast %s\n\n", d.Name, d.Units, blank, blank, blank, blank, blank)
	fmt.Fprintln(w, "Marks, where they stand: x forward of the axle, y left of the centreline, z over the floor")
	for _, name := range slices.Sorted(maps.Keys(d.Measured.Marks)) {
		fmt.Fprintf(w, "  %-4s x %s  y %s  z %s\n", name, blank, blank, blank)
	}
	fmt.Fprintln(w, "\nMeasures, the most useful first; leave blank what cannot be reached")
	narrow := false
	for i := range list {
		m := &list[i]
		fmt.Fprintf(w, "%4d  %-64s %s\n", i+1, formWords(m), blank)
		if m.Narrow && !narrow {
			narrow = true
			fmt.Fprintln(w, "      -- from here on the toe is known well enough to choose a spacer; the rest checks it --")
		}
	}
	_, err := fmt.Fprintln(w, "\nSteering and suspension carry people: what is measured here decides parts. Have the work inspected\nand the car aligned by a qualified technician before it is driven.")
	return err
}

// formWords says what is measured.
func formWords(m *engine.FormMeasure) string {
	switch m.Kind {
	case "height":
		return "height of " + m.Of
	case "side":
		return m.Of + " from the centreline"
	case "station":
		return m.Of + " along the centreline"
	}
	return m.From + " to " + m.Of
}
