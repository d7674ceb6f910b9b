//go:build unix

// Command peers measures this program against general-purpose tools on the same
// cases in one run, and writes the comparison as a page. The tools are compiled or
// interpreted from src; nothing of them is part of the program.
//
//	go run ./internal/peers -out docs/benchmarks.md
//
// Times are processor times, so that other work on the machine counts little, and
// runs of all tools are interleaved, so that what does count meets them alike.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
)

func main() {
	rounds := flag.Int("rounds", 7, "rounds in which every tool takes its turn")
	out := flag.String("out", "", "file to which the page is written, beside the output")
	quick := flag.Bool("quick", false, "leave out the differential evolution by scipy, which takes a minute")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, *rounds, *quick, *out); err != nil {
		fmt.Fprintln(os.Stderr, "peers:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, rounds int, quick bool, out string) error {
	dir, err := os.MkdirTemp("", "peers")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	b, err := newBench(dir)
	if err != nil {
		return err
	}
	p := newPage()
	for _, part := range []func(context.Context, *bench, *page) error{
		sweeps(rounds), sensitivity(rounds), search(rounds, quick), crowds, sizes,
	} {
		if err := part(ctx, b, p); err != nil {
			return err
		}
	}
	fmt.Print(p)
	if out == "" {
		return nil
	}
	return os.WriteFile(out, []byte(p.String()), 0o644)
}
