//go:build unix

// Command mutate checks the tests of packages: it changes one statement at a time, for
// the worse, and sees whether a test fails. It writes what it finds as a page of the
// documentation, and fails where too many changes go unseen, or one without a reason.
//
//	go run ./tools/mutate -out docs/mutants.md
//
// The tree is left as it is: the changed files reach the compiler by go build's -overlay,
// with all changes in them, of which an environment variable switches one on.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"time"
)

// killedPercent is the least share of mutants that tests must kill.
const killedPercent = 95

func main() {
	var c check
	flag.Uint64Var(&c.seed, "seed", 2, "seed of the draw")
	flag.IntVar(&c.count, "count", 80, "mutants of each package")
	flag.BoolVar(&c.own, "own", false, "leave out the tests of other packages that use what is changed: quicker, for work on tests")
	flag.StringVar(&c.only, "only", "", "check this `package` alone, as solver")
	out := flag.String("out", "", "file to which the page is written, beside the output")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, &c, *out); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

// run checks all packages and writes the page.
func run(ctx context.Context, c *check, out string) error {
	tried, err := c.run(ctx)
	if err != nil {
		return err
	}
	p := page{date: time.Now().Format(time.DateOnly), seed: c.seed, verdicts: tried, reasons: reasons, looks: looks}
	text := p.String()
	fmt.Print(text)
	if out != "" {
		if err := os.WriteFile(out, []byte(text), 0o644); err != nil {
			return err
		}
	}
	return errors.Join(p.enough(), p.explained())
}
