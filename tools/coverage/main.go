// Command coverage simulates cars of every template, reads them with a gauge, fits
// them, and counts how often the advice is right and its band holds the truth. It
// writes what it finds as a page of the documentation, and fails where that falls
// short of what is promised there. With -located the cars are taped and located.
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
)

func main() {
	var e experiment
	flag.IntVar(&e.cars, "cars", 200, "cars of each template and part of the experiment")
	flag.Uint64Var(&e.seed, "seed", 1, "seed of the series")
	flag.BoolVar(&e.faultsOnly, "faults", false, "simulate and write no more than the faults of the gauge")
	located := flag.Bool("located", false, "cars that are taped, in place of those read with a gauge")
	out := flag.String("out", "", "file to write; standard output if empty")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	page := e.page
	if *located {
		page = locatedCars{e.cars, e.seed}.page
	}
	if err := run(ctx, page, *out); err != nil {
		fmt.Fprintln(os.Stderr, "coverage:", err)
		os.Exit(1)
	}
}

// page makes the experiment and writes its page.
func (e experiment) page(ctx context.Context, w io.Writer) (kept bool, err error) {
	kinds, err := kindsOfCar()
	if err != nil {
		return false, err
	}
	all, err := e.run(ctx, kinds)
	if err != nil {
		return false, err
	}
	return write(w, e, all)
}

// page makes the experiment and writes its page.
func (e locatedCars) page(ctx context.Context, w io.Writer) (kept bool, err error) {
	f, err := e.run(ctx)
	if err != nil {
		return false, err
	}
	return writeLocated(w, e, f)
}

// run makes an experiment and writes its page to a file.
func run(ctx context.Context, page func(context.Context, io.Writer) (bool, error), path string) error {
	var b bytes.Buffer
	kept, err := page(ctx, &b)
	if err != nil {
		return err
	}
	if path == "" {
		_, err = os.Stdout.Write(b.Bytes())
	} else {
		err = os.WriteFile(path, b.Bytes(), 0o644)
	}
	if err == nil && !kept {
		err = errors.New("not all that is promised is kept; see the table")
	}
	return err
}
