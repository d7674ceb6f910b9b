package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/study"
)

// applied gives a command the choice to print the study with its answer in it.
func applied(cmd *cobra.Command, about string, apply func(context.Context, *study.Document) (*study.Document, error)) {
	wanted := cmd.Flags().Bool("apply", false, about)
	ask := cmd.RunE
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if !*wanted {
			return ask(cmd, args)
		}
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		if d, err = apply(cmd.Context(), d); err != nil {
			return err
		}
		text, err := study.Encode(d)
		if err != nil {
			return err
		}
		_, err = cmd.OutOrStdout().Write(text)
		return err
	}
}
