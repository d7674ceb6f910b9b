package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newChooseCommand() *cobra.Command {
	var o engine.ChooseOptions
	cmd := &cobra.Command{
		Use:   "choose FILE",
		Short: "Rank all combinations of the parts that can be bought",
		Long: `Try every combination of the study's catalogue, each slot with one of its parts or
as it stands, and print the best, and those that no other betters in both toe
change and price.

FILE - reads standard input. Interrupted, the command prints the best so far.` + shardHelp,
	}
	call[*engine.ChooseResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.ChooseResult, error) {
			return engine.Choose(ctx, d, o)
		},
		show: showChoose,
		work: func(d *study.Document) (*batch.Work, error) { return batch.New("choose", d, o) },
	}.setUp(cmd)
	options.Choose(cmd.Flags(), &o)
	return completeOptions(cmd)
}
