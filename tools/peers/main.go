//go:build unix

// Command peers measures this program against general-purpose tools on the same
// cases in one run, and writes the comparison as a page. The tools are compiled or
// interpreted from src; nothing of them is part of the program.
//
//	go run ./tools/peers -out docs/benchmarks.md
//
// Times are processor times, so that other work on the machine counts little, and
// runs of all tools are interleaved, so that what does count meets them alike.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"strings"
)

func main() {
	rounds := flag.Int("rounds", 7, "rounds in which every tool takes its turn")
	out := flag.String("out", "", "file to which the page is written, beside the output")
	only := flag.String("only", "", "the one part to measure: sweep, sensitivity, search, referee, cars or size")
	quick := flag.Bool("quick", false, "leave out the differential evolution by scipy, which takes a minute")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, parts(*rounds, *quick, *only), *out); err != nil {
		fmt.Fprintln(os.Stderr, "peers:", err)
		os.Exit(1)
	}
}

// part measures something and adds it to the page.
type part func(context.Context, *bench, *page) error

// parts returns all parts, or the one called only.
func parts(rounds int, quick bool, only string) []part {
	var out []part
	for _, p := range []struct {
		name string
		part
	}{
		{"sweep", sweeps(rounds)}, {"sensitivity", sensitivity(rounds)}, {"search", search(rounds, quick)},
		{"referee", refereed}, {"cars", crowds}, {"size", sizes},
	} {
		if only == "" || only == p.name {
			out = append(out, p.part)
		}
	}
	return out
}

func run(ctx context.Context, parts []part, out string) error {
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
	for _, measure := range parts {
		if err := measure(ctx, b, p); err != nil {
			return err
		}
	}
	fmt.Print(p)
	if out == "" {
		return nil
	}
	return write(out, p.String())
}

// write writes the page over an older one, of which the part stays that is not ours.
func write(out, page string) error {
	old, err := os.ReadFile(out)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return os.WriteFile(out, []byte(page+others(string(old))), 0o644)
}

// byOthers heads what other commands have measured, on the page's last part.
const byOthers = "\n# Measured by other commands\n"

// others returns the part of a page that is not ours, which is written there by hand.
func others(page string) string {
	_, text, ok := strings.Cut(page, byOthers)
	if !ok {
		return ""
	}
	return byOthers + text
}
