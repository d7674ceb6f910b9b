package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newSteerCommand() *cobra.Command {
	var o engine.SteerOptions
	cmd := &cobra.Command{
		Use:   "steer FILE",
		Short: "Steer the wheels from lock to lock",
		Long: `Move the steering gear from lock to lock at one height of the wheels, and print the
angles of both wheels from straight ahead, toe-out on the turn, the Ackermann
percentage against the cot rule, the turning circle and the ratio.

FILE - reads standard input.`,
	}
	call[*engine.SteerResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.SteerResult, error) {
			return engine.Steer(ctx, d, o)
		},
		show: showSteer,
	}.setUp(cmd)
	options.Steer(cmd.Flags(), &o)
	return completeOptions(cmd)
}
