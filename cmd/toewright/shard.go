package main

import (
	"github.com/spf13/cobra"

	"toewright/internal/batch"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// shardHelp is said of the option by every command that has it.
const shardHelp = `

With --shard i/n the command does one of n equal shares of the work, counted from 0
or from 1, and prints its part, which merge joins with the others: see docs/batch.md.`

// shardOption is the option that asks for one shard of the work.
type shardOption struct {
	engine.Shard
	given bool
}

// String implements [pflag.Value].
func (*shardOption) String() string { return "" }

// Type implements [pflag.Value].
func (*shardOption) Type() string { return "shard" }

// Set implements [pflag.Value].
func (s *shardOption) Set(text string) (err error) {
	s.Shard, err = batch.ParseShard(text)
	s.given = err == nil
	return err
}

// runShard does one shard of a command's work and prints its part.
func runShard(cmd *cobra.Command, d *study.Document, start func(*study.Document) (*batch.Work, error), s engine.Shard) error {
	work, err := start(d)
	if err != nil {
		return err
	}
	part, err := work.Run(cmd.Context(), s)
	if err != nil {
		return err
	}
	_, err = cmd.OutOrStdout().Write(part)
	return err
}
