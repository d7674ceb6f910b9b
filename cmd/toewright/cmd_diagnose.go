package main

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newDiagnoseCommand() *cobra.Command {
	var o engine.DiagnoseOptions
	cmd := &cobra.Command{
		Use:   "diagnose FILE",
		Short: "Say why a toe curve is what it is, and what would mend it",
		Long: `Split the toe change of each car into what ball height, rod length and pivots out of
plane make of it, and print what to move by how much.

FILE - reads standard input.`,
	}
	call[*engine.DiagnoseResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.DiagnoseResult, error) {
			return engine.Diagnose(ctx, d, o)
		},
		show: showDiagnosis,
	}.setUp(cmd)
	options.Diagnose(cmd.Flags(), &o)
	return completeOptions(cmd)
}

// showDiagnosis prints the sentences of each car, once where its sides are alike
// but for their name.
func showDiagnosis(r *report, d *engine.DiagnoseResult) {
	r.line("%s", windowLine(r, d.Window))
	for i := 0; i < len(d.Cars); i++ {
		c := &d.Cars[i]
		side := c.Side + " side"
		if i+1 < len(d.Cars) && diagnosedAlike(c, &d.Cars[i+1]) {
			side = "left side; the right one is alike"
			i++
		}
		r.heading("%s, %s", oneLine(c.Candidate), side)
		for _, line := range c.Words {
			if line != r.Basis() { // it stands at the head
				r.sentence(line)
			}
		}
	}
}

// diagnosedAlike reports whether two diagnoses are of the sides of one car and
// come to the same.
func diagnosedAlike(a, b *engine.Diagnosed) bool {
	same := func(x, y engine.Number) bool { return x-y <= sameOnPaper && y-x <= sameOnPaper }
	return a.Candidate == b.Candidate && a.Side != b.Side && same(a.RMS, b.RMS) &&
		slices.EqualFunc(a.Remedies, b.Remedies, func(p, q engine.Remedy) bool { return same(p.RMS, q.RMS) })
}
