package main

import (
	"context"
	"errors"
	"io"
	"runtime"
	"sync"

	"toewright/internal/engine"
)

// Standard deviations of hardpoints, mm: measured by tape, and of a template with
// little measured.
const tapedSD, roughSD = 2.5, 10.0

// experiment says what is simulated.
type experiment struct {
	Cars int    `json:"cars"` // of each template
	Seed uint64 `json:"seed"`
	// FaultsOnly leaves out all but the faults of the gauge.
	FaultsOnly bool `json:"faultsOnly"`
}

// faultCars is how many cars of each template are read with every fault.
func (e experiment) faultCars() int { return (e.Cars + 7) / 8 }

// Streams keep the generators of the parts of the experiment apart.
const (
	tapedStream = iota
	roughStream
	zerosStream
	streams
)

// simulation is the experiment on cars of some kinds. Each car has its own generator, so that
// the findings do not depend on how many there are, nor on who simulates them.
func (e experiment) simulation(kinds []kindOfCar) *simulation[carResult] {
	return &simulation[carResult]{
		of: e, size: len(kinds) * e.Cars,
		one: func(ctx context.Context, i int) (carResult, error) {
			return e.simulate(ctx, &kinds[i/e.Cars], i%e.Cars)
		},
		page: func(w io.Writer, all []carResult) (bool, error) {
			return write(w, e, e.findings(kinds, all))
		},
	}
}

// run simulates the cars of every template on all processors.
func (e experiment) run(ctx context.Context, kinds []kindOfCar) ([]findings, error) {
	all, err := e.simulation(kinds).do(ctx, engine.Whole)
	if err != nil {
		return nil, err
	}
	return e.findings(kinds, all), nil
}

// findings counts the results of all cars, those of one kind after the other.
func (e experiment) findings(kinds []kindOfCar, all []carResult) []findings {
	out := make([]findings, len(kinds))
	for i := range kinds {
		out[i].name = kinds[i].name
		for k := range e.Cars {
			all[i*e.Cars+k].addTo(&out[i])
		}
	}
	return out
}

// onAll calls a function for each number below n, on all processors.
func onAll(n int, call func(int)) {
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for k := range next {
				call(k)
			}
		})
	}
	for k := range n {
		next <- k
	}
	close(next)
	wait.Wait()
}

// carResult is what came of a number in the series: a car for each part
// of the experiment, nil where it cannot be used.
type carResult struct {
	Taped    *stacks `json:"taped"`
	Rough    *stacks `json:"rough"`
	Zeros    *zeros  `json:"zeros"`
	Faults   faulty  `json:"faults"`
	Unusable int     `json:"unusable"` // of the first three
}

func (e experiment) simulate(ctx context.Context, k *kindOfCar, n int) (r carResult, err error) {
	if n < e.faultCars() {
		if r.Faults, err = k.tryFaults(ctx, faultsSeed+e.Seed, n); err != nil && !errors.Is(err, errUnusable) {
			return r, err
		}
	}
	if e.FaultsOnly {
		return r, nil
	}
	seed := func(stream uint64) uint64 { return streams*e.Seed + stream }
	var errs [streams]error
	r.Taped, errs[tapedStream] = k.tryStacks(ctx, seed(tapedStream), n, tapedSD)
	r.Rough, errs[roughStream] = k.tryStacks(ctx, seed(roughStream), n, roughSD)
	r.Zeros, errs[zerosStream] = k.tryZeros(ctx, seed(zerosStream), n, tapedSD)
	for _, err := range errs {
		switch {
		case errors.Is(err, errUnusable):
			r.Unusable++
		case err != nil:
			return r, err
		}
	}
	return r, nil
}

// addTo counts the result.
func (r *carResult) addTo(f *findings) {
	f.unusable += r.Unusable
	if r.Taped != nil {
		f.addTaped(r.Taped)
	}
	if r.Rough != nil {
		f.addRough(r.Rough)
	}
	if r.Zeros != nil {
		f.addZeros(r.Zeros)
	}
	if r.Faults != nil {
		f.addFaults(r.Faults)
	}
}
