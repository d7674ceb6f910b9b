package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newMapCommand() *cobra.Command {
	var o engine.MapOptions
	cmd := &cobra.Command{
		Use:   "map FILE",
		Short: "Show the toe change over two parameters",
		Long: `Print how the toe change less target depends on two parameters: the valley along
which they make up for each other. People are shown a coarse map; --json has all
cells.

FILE - reads standard input.` + shardHelp,
	}
	call[*engine.MapResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.MapResult, error) {
			return engine.Map(ctx, d, o)
		},
		show: showMap,
		work: func(d *study.Document) (*batch.Work, error) { return batch.New("map", d, o) },
	}.setUp(cmd)
	options.Map(cmd.Flags(), &o)
	return completeOptions(cmd)
}
