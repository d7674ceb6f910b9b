package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"toewright/internal/batch"
	"toewright/internal/calls"
	"toewright/internal/study"
)

// newCallCommand returns the command that asks a call of a study.
func newCallCommand(c calls.Call) *cobra.Command {
	if c.Types != nil {
		return newFileCommand(c)
	}
	a := &asking{call: c, request: c.New(), manual: manuals[c.Name]}
	cmd := newStudyCommand(c, a.request, a.run)
	a.shown.addFlags(cmd.Flags())
	if batch.Divides(c.Name) {
		cmd.Long += shardHelp
		a.shard.addFlags(cmd.Flags())
	}
	if a.manual.apply != nil {
		cmd.Flags().BoolVar(&a.apply, "apply", false, a.manual.apply.usage)
	}
	return completeOptions(cmd)
}

// newStudyCommand returns a command that reads one study and has the options of a call.
func newStudyCommand(c calls.Call, request *calls.Request, run func(*cobra.Command, []string) error) *cobra.Command {
	cmd := &cobra.Command{
		Use:               c.Name + " FILE",
		Short:             c.Summary,
		Long:              manuals[c.Name].long,
		Args:              usage(oneFile),
		ValidArgsFunction: completeStudy,
		RunE:              run,
	}
	for _, o := range request.Options {
		cmd.Flags().Var(&option{Option: o}, o.Name, o.Usage)
	}
	return cmd
}

// option is an option of a call as a flag, which is given once.
type option struct {
	calls.Option
	given bool
}

var _ pflag.Value = (*option)(nil)

// String implements [pflag.Value]: no option of a call has a default to show.
func (*option) String() string { return "" }

// Type implements [pflag.Value].
func (o *option) Type() string { return string(o.Kind) }

// Set implements [pflag.Value].
func (o *option) Set(text string) error {
	if o.given {
		return errors.New("stands twice; give it once")
	}
	o.given = true
	return o.Option.Set(text)
}

// asking is a call as the command line asks it.
type asking struct {
	call    calls.Call
	request *calls.Request
	manual  manual
	shown   answering
	shard   sharding
	apply   bool // print the study with the answer in it
}

// run reads a study, asks and prints.
func (a *asking) run(cmd *cobra.Command, args []string) error {
	if err := a.shard.check(cmd); err != nil {
		return err
	}
	d, err := readStudy(args[0], cmd.InOrStdin())
	switch {
	case err != nil:
		return err
	case a.shard.shard.given:
		return a.shard.run(cmd, a.call.Name, d, a.request.Values)
	case a.apply:
		return a.printApplied(cmd, d)
	}
	if d, err = a.shown.of(cmd, d); err != nil {
		return err
	}
	answer, err := a.request.Ask(cmd.Context(), d, nil)
	if err != nil {
		return err
	}
	return a.shown.print(cmd, d, answer, func(r *report) { a.manual.show(r, answer) })
}

// printApplied prints the study with the answer in it.
func (a *asking) printApplied(cmd *cobra.Command, d *study.Document) error {
	answer, err := a.request.Ask(cmd.Context(), d, nil)
	if err != nil {
		return err
	}
	if d, err = a.manual.apply.in(d, answer); err != nil {
		return err
	}
	return printStudy(cmd, d)
}

// printStudy prints a study as its file.
func printStudy(cmd *cobra.Command, d *study.Document) error {
	text, err := study.Encode(d)
	if err != nil {
		return err
	}
	_, err = cmd.OutOrStdout().Write(text)
	return err
}

// oneFile refuses anything but one FILE.
func oneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("want one study FILE, or - for standard input, got %d", len(args))
	}
	return nil
}
