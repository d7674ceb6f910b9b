package report

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// TapeForm returns a form, as plain text, to measure a study's car by: blanks for the marks and
// for each measure, in the order in which each helps most. A study without marks gets those of
// the guide.
func TapeForm(ctx context.Context, d *study.Document, o engine.TapeFormOptions) (string, error) {
	if d.Measured == nil || len(d.Measured.Marks) == 0 {
		d = d.Clone()
		d.SetSixMarks()
	}
	list, err := engine.TapeForm(ctx, d, o)
	if err != nil {
		return "", err
	}
	const blank = "____________"
	var w strings.Builder
	fmt.Fprintf(&w, "%s: by tape, in %s\n\nMeasured by %s  date %s\nTyre pressures %s  ride height %s  fuel and ballast %s\n\n", d.Name, d.Units, blank, blank, blank, blank, blank)
	w.WriteString("Marks, where they stand: x forward of the axle, y left of the centreline, z over the floor\n")
	for _, name := range slices.Sorted(maps.Keys(d.Measured.Marks)) {
		fmt.Fprintf(&w, "  %-4s x %s  y %s  z %s\n", name, blank, blank, blank)
	}
	w.WriteString("\nMeasures, the most useful first; leave blank what cannot be reached\n")
	narrow := false
	for i := range list {
		m := &list[i]
		fmt.Fprintf(&w, "%4d  %-64s %s\n", i+1, formWords(m), blank)
		if m.Narrow && !narrow {
			narrow = true
			w.WriteString("      -- from here on the toe is known well enough to choose a spacer; the rest checks it --\n")
		}
	}
	w.WriteString("\nSteering and suspension carry people: what is measured here decides parts. Have the work inspected\nand the car aligned by a qualified technician before it is driven.\n")
	return w.String(), nil
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
