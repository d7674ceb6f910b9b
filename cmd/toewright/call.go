package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/study"
)

// call is a command that asks one question about a study.
type call[R any] struct {
	ask  func(context.Context, *study.Document) (R, error)
	show func(*report, R)                           // prints the answer for people
	work func(*study.Document) (*batch.Work, error) // its work, to be done in shards; nil where it cannot be
}

// setUp makes cmd read a study, ask and print.
func (c call[R]) setUp(cmd *cobra.Command) *cobra.Command {
	var shown answering
	var shard sharding
	cmd.Args = usage(oneFile)
	cmd.ValidArgsFunction = completeStudy
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := shard.check(cmd); err != nil {
			return err
		}
		d, err := readStudy(args[0], cmd.InOrStdin())
		if err != nil {
			return err
		}
		if shard.shard.given {
			return shard.run(cmd, d, c.work)
		}
		if d, err = shown.of(cmd, d); err != nil {
			return err
		}
		answer, err := c.ask(cmd.Context(), d)
		if err != nil {
			return err
		}
		return shown.print(cmd, d, answer, func(r *report) { c.show(r, answer) })
	}
	shown.addFlags(cmd.Flags())
	if c.work != nil {
		shard.addFlags(cmd.Flags())
	}
	return cmd
}

// oneFile refuses anything but one FILE.
func oneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("want one study FILE, or - for standard input, got %d", len(args))
	}
	return nil
}
