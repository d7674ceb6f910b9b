package main

import (
	"io"
	"os"

	"github.com/spf13/cobra"

	"toewright/internal/options"
	bench "toewright/internal/report"
	"toewright/internal/version"
)

// standardOutput is the --output that stands for it.
const standardOutput = "-"

func newReportCommand() *cobra.Command {
	o := bench.Options{Version: version.Name()}
	var output string
	cmd := &cobra.Command{
		Use:   "report FILE",
		Short: "Write the bench sheet of a candidate",
		Long: `Write the bench sheet of a candidate as one self-contained HTML page: the steering
arms' dimensions from the original hole, toe before and after as curves and numbers,
what else changes, limits, tolerances, conditions and cautions. It prints on one or
two pages, legible in black and white.

FILE - reads standard input.`,
		Args:              usage(oneFile),
		ValidArgsFunction: completeStudy,
		RunE: func(cmd *cobra.Command, args []string) error {
			d, err := readStudy(args[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			sheet, err := bench.HTML(cmd.Context(), d, o)
			if err != nil {
				return err
			}
			return writeOutput(output, cmd.OutOrStdout(), sheet)
		},
	}
	options.Report(cmd.Flags(), &o)
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
