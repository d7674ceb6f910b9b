package main

import (
	"cmp"
	"errors"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"toewright/internal/batch"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// shardHelp is said of the options by every command that has them.
const shardHelp = `

With --shard i/n the command does one of n equal shares of the work, counted from 0
or from 1, and prints its part, which merge joins with the others: see docs/batch.md.`

// sharding are the options that ask for one shard of the work.
type sharding struct {
	shard shardOption
	part  string // file for the part; standard output where empty
}

// partOption is the option that takes a file which need not be there yet.
const partOption = "part"

func (s *sharding) addFlags(fs *pflag.FlagSet) {
	fs.Var(&s.shard, "shard", "do no more than share `i/n` of the work, and print its part for merge")
	fs.StringVar(&s.part, partOption, "", "`file` to write the part to, whole or not at all, in place of printing it")
}

// check refuses a file for a part where no shard is asked for.
func (s *sharding) check(cmd *cobra.Command) error {
	if s.part != "" && !s.shard.given {
		return &usageError{cmd.CommandPath(), errors.New("--part is for the part of a --shard")}
	}
	return nil
}

// run does the shard of a call's work and hands out its part.
func (s *sharding) run(cmd *cobra.Command, call string, d *study.Document, options any) error {
	work, err := batch.New(call, d, options)
	if err != nil {
		return err
	}
	part, err := work.Run(cmd.Context(), s.shard.Shard)
	if err != nil {
		return err
	}
	if s.part != "" {
		return writeWhole(s.part, part)
	}
	_, err = cmd.OutOrStdout().Write(part)
	return err
}

// shardOption is the value of --shard.
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

// writeWhole writes a file that, whenever the process ends, is as it was before or
// has all of data.
func writeWhole(path string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(path), filepath.Base(path)+".*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	err = cmp.Or(err, f.Chmod(partMode), f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		_ = os.Remove(f.Name()) // What went wrong first is what is said.
	}
	return err
}

// partMode lets others merge what was written.
const partMode = 0o644
