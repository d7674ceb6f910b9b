//go:build unix

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"syscall"
)

// Limits of a run of tests, so that a mutant without end is killed: many times what the
// tests need. They count processor time, as a busy machine must not kill any.
const (
	memoryLimit = 6_000_000 // kB of address space
	quickLimit  = 10        // s for the quick tests of a package
	slowLimit   = 120       // s for the others, or all of another package
)

// timeOrMemory is what kills a mutant whose tests come to a limit.
const timeOrMemory = "time or memory"

// compile builds the test program of a package.
func compile(ctx context.Context, overlay string, p *program) error {
	out, err := exec.CommandContext(ctx, "go", "test", "-c", "-overlay="+overlay, "-o="+p.path, "./"+p.folder).CombinedOutput()
	if err != nil {
		return fmt.Errorf("go test -c ./%s: %w\n%s", p.folder, err, out)
	}
	return nil
}

// run runs the tests with a mutant on, for as many seconds of the processor at most, and
// returns one that fails.
func (p *program) run(ctx context.Context, number, seconds int, options ...string) (by string, err error) {
	command := append([]string{p.path, "-test.failfast", "-test.timeout=10m"}, options...)
	return limited(ctx, p.folder, seconds, environment+"="+strconv.Itoa(number), command)
}

// limited runs a command within the limits and returns the test that fails in it.
func limited(ctx context.Context, folder string, seconds int, environment string, command []string) (by string, err error) {
	script := fmt.Sprintf(`ulimit -v %d; ulimit -t %d; exec "$0" "$@"`, memoryLimit, seconds)
	c := exec.CommandContext(ctx, "sh", append([]string{"-c", script}, command...)...)
	c.Dir = folder
	c.Env = append(os.Environ(), environment)
	out, err := c.CombinedOutput()
	failed := new(exec.ExitError)
	if !errors.As(err, &failed) || ctx.Err() != nil {
		return "", err
	}
	if status, ok := failed.Sys().(syscall.WaitStatus); ok && status.Signaled() {
		return timeOrMemory, nil
	}
	return failedTest(out), nil
}

// A test that fails, and what the runtime says at a limit.
var (
	testFailed   = regexp.MustCompile(`(?m)^--- FAIL: (\w+)`)
	limitReached = regexp.MustCompile(`test timed out|out of memory|cannot allocate memory`)
	testPanicked = regexp.MustCompile(`(?m)^\s*\S+\.(Test\w+|Example\w*|Fuzz\w+)\(`)
)

// failedTest returns the test that failed by the output of a run.
func failedTest(out []byte) string {
	switch failed, panicked := testFailed.FindSubmatch(out), testPanicked.FindSubmatch(out); {
	case limitReached.Match(out):
		return timeOrMemory
	case failed != nil:
		return string(failed[1])
	case panicked != nil:
		return string(panicked[1])
	}
	return "an end without a word"
}
