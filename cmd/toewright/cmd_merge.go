package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/study"
)

func newMergeCommand() *cobra.Command {
	var shown answering
	cmd := &cobra.Command{
		Use:   "merge FILE PART...",
		Short: "Join the parts that tolerance, choose or map printed with --shard",
		Long: `Read the parts that the shards of one run of tolerance, choose or map printed, in any
order, and print what the command would have printed by itself, to the byte.

FILE is the study that the shards were run on; it or one PART may be -, standard
input. A PART may be packed by gzip, and hold several parts, one a line, as they come
through a pipe. A part that is damaged, of another study, other options, another version or
there twice is refused by name, and so is a run that lacks some.`,
		Args:              usage(someParts),
		ValidArgsFunction: completeParts,
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		call, answer, err := merged(cmd, d, args[1:])
		if err != nil {
			return err
		}
		if d, err = shown.of(cmd, d); err != nil {
			return err
		}
		return shown.print(cmd, d, answer, func(r *report) { manuals[call].show(r, answer) })
	}
	shown.addFlags(cmd.Flags())
	return completeOptions(cmd)
}

// someParts refuses anything but a study and parts of a run.
func someParts(_ *cobra.Command, args []string) error {
	if len(args) < 2 {
		return fmt.Errorf("want one study FILE and the PARTs of its run, got %d", len(args))
	}
	return nil
}

// merged returns what the parts of a run come to, and of which call they are. One part is
// in memory at a time.
func merged(cmd *cobra.Command, d *study.Document, files []string) (call string, answer any, err error) {
	m, err := batch.NewMerge(d)
	if err != nil {
		return "", nil, err
	}
	for _, file := range files {
		if err := eachPart(file, cmd.InOrStdin(), m.Add); err != nil {
			return "", nil, err
		}
	}
	answer, err = m.Answer(cmd.Context())
	return m.Command(), answer, err
}
