// Command coverage simulates cars of every template, reads them with a gauge, fits
// them, and counts how often the advice is right and its band holds the truth. It
// writes what it finds as a page of the documentation, and fails where that falls
// short of what is promised there. With -located the cars are taped and located.
// With -shard it writes what came of a part of the cars, and with -merge the page from
// the parts of all, to the byte that of one run.
package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"

	"toewright/internal/batch"
)

func main() {
	var e experiment
	flag.IntVar(&e.Cars, "cars", 200, "cars of each template and part of the experiment")
	flag.Uint64Var(&e.Seed, "seed", 1, "seed of the series")
	flag.BoolVar(&e.FaultsOnly, "faults", false, "simulate and write no more than the faults of the gauge")
	located := flag.Bool("located", false, "cars that are taped, in place of those read with a gauge")
	var a asked
	flag.StringVar(&a.out, "out", "", "file to write; standard output if empty")
	flag.StringVar(&a.shard, "shard", "", "simulate part i of n, i/n, and write what came of it")
	flag.BoolVar(&a.merge, "merge", false, "write the page from the parts of all shards, named as arguments")
	flag.Parse()
	a.parts = flag.Args()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := a.simulate(ctx, e, *located); err != nil {
		fmt.Fprintln(os.Stderr, "coverage:", err)
		os.Exit(1)
	}
}

// asked says what is to be written, and where.
type asked struct {
	out, shard string
	merge      bool
	parts      []string
}

// simulate makes an experiment.
func (a *asked) simulate(ctx context.Context, e experiment, located bool) error {
	if located {
		return run(ctx, a, locatedCars{e.Cars, e.Seed}.simulation())
	}
	kinds, err := kindsOfCar()
	if err != nil {
		return err
	}
	return run(ctx, a, e.simulation(kinds))
}

// run writes what is asked for of an experiment to a file.
func run[R any](ctx context.Context, a *asked, s *simulation[R]) error {
	var b bytes.Buffer
	kept, err := answer(ctx, a, s, &b)
	if err != nil {
		return err
	}
	if a.out == "" {
		_, err = os.Stdout.Write(b.Bytes())
	} else {
		err = os.WriteFile(a.out, b.Bytes(), 0o644)
	}
	if err == nil && !kept {
		err = errors.New("not all that is promised is kept; see the table")
	}
	return err
}

// answer writes a page, or the part of a shard.
func answer[R any](ctx context.Context, a *asked, s *simulation[R], w io.Writer) (kept bool, err error) {
	switch {
	case a.merge:
		return s.merge(a.parts, w)
	case a.shard == "":
		return s.write(ctx, w)
	}
	own, err := batch.ParseShard(a.shard)
	if err != nil {
		return false, err
	}
	return true, s.writePart(ctx, own, w)
}
