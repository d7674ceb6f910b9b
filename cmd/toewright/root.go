package main

import (
	"github.com/spf13/cobra"

	"toewright/internal/calls"
)

// newRootCommand returns the command with all its subcommands.
func newRootCommand() *cobra.Command {
	root := &cobra.Command{
		Use:           "toewright COMMAND",
		Short:         "Toe through wheel travel, and the steering arm that holds it",
		Args:          usage(noCommand),
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SetFlagErrorFunc(flagError)
	for _, c := range calls.Public() {
		root.AddCommand(newCallCommand(c))
	}
	root.AddCommand(
		newMergeCommand(),
		newPointsCommand(),
		newSchemaCommand(),
		newServeCommand(),
		newSiteCommand(),
		newVersionCommand(),
	)
	return root
}
