package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// Exit statuses.
const (
	exitDone   = 0 // the answer was given
	exitFailed = 1 // the input is wrong or cannot be solved
	exitUsage  = 2 // the command line is wrong
)

// run executes a command line and returns the exit status. An error becomes one
// line on stderr. An interrupt cancels the command's context.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	root := newRootCommand()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	if err != nil {
		fmt.Fprintln(stderr, "toewright:", err)
	}
	return exitStatus(err)
}

func exitStatus(err error) int {
	var usage *usageError
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &usage):
		return exitUsage
	}
	return exitFailed
}
