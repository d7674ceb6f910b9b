package main

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"

	"toewright/internal/version"
)

func newVersionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Print the version",
		Args:  usage(cobra.NoArgs),
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := fmt.Fprintf(cmd.OutOrStdout(), "toewright %s (%s, %s/%s)\n",
				version.Name(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return err
		},
	}
}
