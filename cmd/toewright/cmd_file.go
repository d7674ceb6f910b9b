package main

import (
	"io"
	"os"

	"github.com/spf13/cobra"

	"toewright/internal/calls"
)

// standardOutput is the --output that stands for it.
const standardOutput = "-"

// newFileCommand returns the command that writes the answer of a call, which is a file of
// its own.
func newFileCommand(c calls.Call) *cobra.Command {
	request := c.New()
	var output string
	cmd := newStudyCommand(c, request, func(cmd *cobra.Command, args []string) error {
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		answer, err := request.Ask(cmd.Context(), d, nil)
		if err != nil {
			return err
		}
		return writeOutput(output, cmd.OutOrStdout(), []byte(answer.(*calls.File).Text))
	})
	cmd.Flags().StringVar(&output, "output", standardOutput, "`file` to write, - for standard output")
	return completeOptions(cmd)
}

// writeOutput writes to a file, or to standard output.
func writeOutput(path string, stdout io.Writer, data []byte) error {
	if path == standardOutput {
		_, err := stdout.Write(data)
		return err
	}
	return os.WriteFile(path, data, 0o644)
}
