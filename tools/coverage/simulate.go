package main

import (
	"context"
	"errors"
	"runtime"
	"sync"
)

// Standard deviations of hardpoints, mm: measured by tape, and of a template with
// little measured.
const tapedSD, roughSD = 2.5, 10.0

// experiment says what is simulated.
type experiment struct {
	cars int // of each template
	seed uint64
	// faultsOnly leaves out all but the faults of the gauge.
	faultsOnly bool
}

// faultCars is how many cars of each template are read with every fault.
func (e experiment) faultCars() int { return (e.cars + 7) / 8 }

// Streams keep the generators of the parts of the experiment apart.
const (
	tapedStream = iota
	roughStream
	zerosStream
	streams
)

// run simulates the cars of every template on all processors. Each car has its own
// generator, so that the findings do not depend on how many there are.
func (e experiment) run(ctx context.Context, kinds []kindOfCar) ([]findings, error) {
	out := make([]findings, len(kinds))
	for i := range kinds {
		out[i].name = kinds[i].name
		if err := e.runKind(ctx, &kinds[i], &out[i]); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// runKind simulates the cars of one template.
func (e experiment) runKind(ctx context.Context, k *kindOfCar, f *findings) error {
	results := make([]carResult, e.cars)
	onAll(e.cars, func(n int) { results[n] = e.simulate(ctx, k, n) })
	for _, r := range results {
		if err := r.addTo(f); err != nil {
			return err
		}
	}
	return ctx.Err()
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
// of the experiment.
type carResult struct {
	taped, rough *stacks
	zeros        *zeros
	faults       faulty
	errs         [streams]error
	faultsErr    error
}

func (e experiment) simulate(ctx context.Context, k *kindOfCar, n int) (r carResult) {
	if n < e.faultCars() {
		r.faults, r.faultsErr = k.tryFaults(ctx, faultsSeed+e.seed, n)
	}
	if e.faultsOnly {
		return r
	}
	seed := func(stream uint64) uint64 { return streams*e.seed + stream }
	r.taped, r.errs[tapedStream] = k.tryStacks(ctx, seed(tapedStream), n, tapedSD)
	r.rough, r.errs[roughStream] = k.tryStacks(ctx, seed(roughStream), n, roughSD)
	r.zeros, r.errs[zerosStream] = k.tryZeros(ctx, seed(zerosStream), n, tapedSD)
	return r
}

// addTo counts the result; an error other than an unusable car is returned.
func (r *carResult) addTo(f *findings) error {
	for _, err := range r.errs {
		switch {
		case errors.Is(err, errUnusable):
			f.unusable++
		case err != nil:
			return err
		}
	}
	if r.taped != nil {
		f.addTaped(r.taped)
	}
	if r.rough != nil {
		f.addRough(r.rough)
	}
	if r.zeros != nil {
		f.addZeros(r.zeros)
	}
	if err := r.faultsErr; err != nil && !errors.Is(err, errUnusable) {
		return err
	}
	if r.faults != nil {
		f.addFaults(r.faults)
	}
	return nil
}
