package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newLoadsCommand() *cobra.Command {
	var o engine.LoadsOptions
	cmd := &cobra.Command{
		Use:   "loads FILE",
		Short: "Find the forces in rods, springs and steering arms under stated loads",
		Long: `Print, for each load case of the study, the force in the tie rod and the spring of
each car, what the rod does to the steering arm at its face and to the ball's stud,
and the ratio to the base car's rod.

FILE - reads standard input. The links weigh nothing, the joints have no friction,
the gear is held, and the spring holds the wheel at its travel. Nothing is added to
the forces stated. What a part bears is for strength work to say.`,
	}
	call[*engine.LoadsResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.LoadsResult, error) {
			return engine.Loads(ctx, d, o)
		},
		show: showLoads,
	}.setUp(cmd)
	options.Loads(cmd.Flags(), &o)
	return completeOptions(cmd)
}
