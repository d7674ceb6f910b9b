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
	applied(cmd, &o)
	return completeOptions(cmd)
}

// applied gives the fit the choice to print the study with its fitted hardpoints.
func applied(cmd *cobra.Command, o *engine.FitOptions) {
	apply := cmd.Flags().Bool("apply", false, "print the study with its hardpoints as fitted, and nothing else")
	ask := cmd.RunE
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if !*apply {
			return ask(cmd, args)
		}
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		f, err := engine.Fit(cmd.Context(), d, *o)
		if err != nil {
			return err
		}
		d, err = engine.ApplyFit(d, f)
		if err != nil {
			return err
		}
		text, err := study.Encode(d)
		if err != nil {
			return err
		}
		_, err = cmd.OutOrStdout().Write(text)
		return err
	}
}
