package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"toewright/internal/web"
)

func newSiteCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "site FOLDER",
		Short: "Write the page as files for any web host",
		Long: `Write the page into a folder, for a host that serves nothing but files.

It works at the root of a host or under any path, and once loaded without the
network. The folder is made if there is none; other files in it are left alone.`,
		Args: usage(cobra.ExactArgs(1)),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := web.WriteSite(args[0], nil); err != nil {
				return err
			}
			_, err := fmt.Fprintf(cmd.OutOrStdout(), "the page is in %s\n", args[0])
			return err
		},
	}
}
