// Command load puts the service under load and under attack, on this machine's
// loopback alone: for a set time a load tool sends sweeps of every demo car at a
// fixed rate, while storms of bad, huge, slow, half-closed and abandoned requests go
// on beside it. It fails on an answer of 5xx, on a call or a goroutine that is left
// when all is over, on memory past a bound, and on a server that does not stop, or
// stops without finishing the call that runs. It prints tables for docs/service.md.
//
//	go run ./tools/load -program bin/toewright -tool bin/vegeta
//
// The tool is vegeta, which keeps its rate however slowly answers come.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"time"
)

// options say how much load there is.
type options struct {
	program, tool, studies string
	rate                   int           // sweeps a second
	lasting                time.Duration // of the load and the storms
}

// longest is the most that a run may last: it is to end by itself.
const longest = 10 * time.Minute

func main() {
	o := options{}
	flag.StringVar(&o.program, "program", "bin/toewright", "the program to serve with")
	flag.StringVar(&o.tool, "tool", "bin/vegeta", "the load tool")
	flag.StringVar(&o.studies, "studies", "testdata/studies", "folder of the studies that are sent")
	flag.IntVar(&o.rate, "rate", 1000, "sweeps a second")
	flag.DurationVar(&o.lasting, "lasting", time.Minute, "how long")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	ctx, cancel := context.WithTimeout(ctx, longest)
	defer cancel()
	if err := run(ctx, o); err != nil {
		fmt.Fprintln(os.Stderr, "load:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, o options) error {
	s, err := startServer(ctx, o.program)
	if err != nil {
		return err
	}
	defer s.kill()
	f, err := measure(ctx, o, s)
	if err != nil {
		return err
	}
	fmt.Print(f)
	return f.verdict()
}
