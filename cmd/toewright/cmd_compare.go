package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newCompareCommand() *cobra.Command {
	var o engine.CompareOptions
	cmd := &cobra.Command{
		Use:   "compare FILE",
		Short: "Put the candidates beside the base car",
		Long: `Print the figures of the base car and of each candidate over the window of the
study's search or else of its travel, each with its difference from the yardstick.

FILE - reads standard input. Toe change is against the car's own toe at travel 0;
its error, that less the target, which is flat where the study states none.`,
	}
	call[*engine.CompareResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.CompareResult, error) {
			return engine.Compare(ctx, d, o)
		},
		show: showCompare,
	}.setUp(cmd)
	options.Compare(cmd.Flags(), &o)
	return completeOptions(cmd)
}
