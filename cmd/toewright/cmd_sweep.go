package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newSweepCommand() *cobra.Command {
	var o engine.SweepOptions
	cmd := &cobra.Command{
		Use:   "sweep FILE",
		Short: "Move the wheels through their travel",
		Long: `Move the wheels of the base car and of each candidate through the study's
window of travel, and print toe, camber and what else changes on the way.

FILE - reads standard input. Tables run from bump at the top to droop at the
bottom; the JSON runs from droop to bump. Toe is toe-in positive, static toe
included. Where the linkage locks, the positions before it are printed and what
stands in the way is named.`,
	}
	call[*engine.SweepResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.SweepResult, error) {
			return engine.Sweep(ctx, d, o)
		},
		show: showSweep,
	}.setUp(cmd)
	options.Sweep(cmd.Flags(), &o)
	return completeOptions(cmd)
}
