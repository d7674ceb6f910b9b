package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/engine"
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
input. A part that is damaged, of another study, other options, another version or
there twice is refused by name, and so is a run that lacks some.`,
		Args:              usage(someParts),
		ValidArgsFunction: completeParts,
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		answer, err := merged(cmd, d, args[1:])
		if err != nil {
			return err
		}
		if d, err = shown.of(cmd, d); err != nil {
			return err
		}
		return shown.print(cmd, d, answer, func(r *report) { showAny(r, answer) })
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

// merged returns what the parts of a run come to. One part is in memory at a time.
func merged(cmd *cobra.Command, d *study.Document, files []string) (any, error) {
	m, err := batch.NewMerge(d)
	if err != nil {
		return nil, err
	}
	for _, file := range files {
		data, err := readInput(file, cmd.InOrStdin(), maxPart)
		if err != nil {
			return nil, err
		}
		if err := m.Add(file, data); err != nil {
			return nil, err
		}
	}
	return m.Answer()
}

// maxPart is far more than any part takes: a tolerance's grows to some megabytes,
// a map's to ten.
const maxPart = 256 << 20

// showAny prints an answer as the command does whose it is.
func showAny(r *report, answer any) {
	switch a := answer.(type) {
	case *engine.ToleranceResult:
		showTolerance(r, a)
	case *engine.ChooseResult:
		showChoose(r, a)
	case *engine.MapResult:
		showMap(r, a)
	}
}
