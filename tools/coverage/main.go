// Command coverage simulates cars of every template, reads them with a gauge, fits
// them, and counts how often the advice is right and its band holds the truth. It
// writes what it finds as a page of the documentation, and fails where that falls
// short of what is promised there.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
)

func main() {
	var e experiment
	flag.IntVar(&e.cars, "cars", 200, "cars of each template and part of the experiment")
	flag.Uint64Var(&e.seed, "seed", 1, "seed of the series")
	flag.BoolVar(&e.faultsOnly, "faults", false, "simulate and write no more than the faults of the gauge")
	out := flag.String("out", "", "file to write; standard output if empty")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, e, *out); err != nil {
		fmt.Fprintln(os.Stderr, "coverage:", err)
		os.Exit(1)
	}
}

// run makes the experiment and writes its page to a file.
func run(ctx context.Context, e experiment, path string) error {
	kinds, err := kindsOfCar()
	if err != nil {
		return err
	}
	all, err := e.run(ctx, kinds)
	if err != nil {
		return err
	}
	w := io.WriteCloser(os.Stdout)
	if path != "" {
		if w, err = os.Create(path); err != nil {
			return err
		}
	}
	kept, err := write(w, e, all)
	if err := errors.Join(err, w.Close()); err != nil {
		return err
	}
	if !kept {
		return errors.New("not all that is promised is kept; see the table")
	}
	return nil
}
