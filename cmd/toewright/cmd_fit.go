package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newFitCommand() *cobra.Command {
	var o engine.FitOptions
	cmd := &cobra.Command{
		Use:   "fit FILE",
		Short: "Find the car behind gauge readings, and the spacers it wants",
		Long: `Find the car that the study's readings most likely came from, given how well its
hardpoints are known, and print whether it explains them, which readings do not
belong, what to fit for the least toe change with its 90 % band, and what to
measure next.

FILE - reads standard input. Readings with the purpose "verify" are not fitted but
held against what the fitted car should give.

With --apply the study is printed with its hardpoints as fitted, for a search that
serves the real car:

    toewright fit car.json --apply | toewright search -`,
	}
	call[*engine.FitResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.FitResult, error) {
			return engine.Fit(ctx, d, o)
		},
		show: showFit,
	}.setUp(cmd)
	options.Fit(cmd.Flags(), &o)
	applied(cmd, "print the study with its hardpoints as fitted, and nothing else", func(ctx context.Context, d *study.Document) (*study.Document, error) {
		f, err := engine.Fit(ctx, d, o)
		if err != nil {
			return nil, err
		}
		return engine.ApplyFit(d, f)
	})
	return completeOptions(cmd)
}
