package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newToleranceCommand() *cobra.Command {
	var o engine.ToleranceOptions
	cmd := &cobra.Command{
		Use:   "tolerance FILE",
		Short: "Build a series of cars within their tolerances and count those that pass",
		Long: `Build a series of cars that differ within the study's tolerances and print how far
their toe curves spread, by simulation and by linear propagation side by side; how
many pass a limit; and which dimensions decide it. Each car has its static toe set
again or, with --toe as-built, leaves the line with its rods as drawn.

FILE - reads standard input. The same seed gives the same cars. Interrupted, the
command prints what the cars built so far say.` + shardHelp,
	}
	call[*engine.ToleranceResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.ToleranceResult, error) {
			return engine.Tolerance(ctx, d, o)
		},
		show: showTolerance,
		work: func(d *study.Document) (*batch.Work, error) { return batch.New("tolerance", d, o) },
	}.setUp(cmd)
	options.Tolerance(cmd.Flags(), &o)
	return completeOptions(cmd)
}
