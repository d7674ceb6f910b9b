package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

// usageError reports a command line that is wrong, whatever the input.
type usageError struct {
	command string // the command it was given to, to ask help of
	cause   error
}

func (e *usageError) Error() string {
	return fmt.Sprintf("%v; see %s --help", e.cause, e.command)
}

func (e *usageError) Unwrap() error { return e.cause }

// flagError marks an error in the flags as one of usage.
func flagError(cmd *cobra.Command, err error) error {
	return &usageError{cmd.CommandPath(), err}
}

// usage marks the errors of a check of arguments as errors of usage.
func usage(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if err := check(cmd, args); err != nil {
			return &usageError{cmd.CommandPath(), err}
		}
		return nil
	}
}

// noCommand reports a word in the place of a command that is none.
func noCommand(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf("no command %q", args[0])
}
