package main

import "github.com/spf13/cobra"

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
	root.AddCommand(
		newSweepCommand(),
		newCompareCommand(),
		newSteerCommand(),
		newDiagnoseCommand(),
		newAxleCommand(),
		newLoadsCommand(),
		newSearchCommand(),
		newTradeOffCommand(),
		newFitCommand(),
		newToleranceCommand(),
		newChooseCommand(),
		newMapCommand(),
		newMergeCommand(),
		newReportCommand(),
		newSchemaCommand(),
		newServeCommand(),
		newSiteCommand(),
		newVersionCommand(),
	)
	return root
}
