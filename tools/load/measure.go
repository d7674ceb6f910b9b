package main

import (
	"context"
	"maps"
	"os"
	"path/filepath"
	"sync"
	"time"
)

// figures are what a run found.
type figures struct {
	options  options
	calm     *attack // with nothing beside it
	sweeps   *attack // beside the storms
	storming float64 // cores that the storms kept busy
	storms   []*storm
	ends     []ends // of each storm
	server   ends   // of all calls, as the server counts them

	before, after  metrics
	peakGoroutines float64
	peakHeap       float64 // bytes
	settled        time.Duration
	stopped        time.Duration
	stopErr        error
	lastEnd        string // of the call that ran when the server was asked to stop
}

// stormStudy is the study of the storms and of the last call.
const stormStudy = "double-wishbone-rack.json"

// measure puts the server under load, and once more with storms beside it, waits until it
// has settled, and stops it while a call runs.
func measure(ctx context.Context, o options, s *server) (*figures, error) {
	f := &figures{options: o}
	study, err := os.ReadFile(filepath.Join(o.studies, stormStudy))
	if err != nil {
		return nil, err
	}
	f.storms = storms(string(study))
	if f.before, err = s.metrics(ctx); err != nil {
		return nil, err
	}
	if f.calm, err = sweep(ctx, o, s); err != nil {
		return nil, err
	}
	if err := f.rage(ctx, s); err != nil {
		return nil, err
	}
	if err := f.settle(ctx, s); err != nil {
		return nil, err
	}
	f.server = ends{}
	maps.Copy(f.server, f.after.statuses())
	f.stopped, f.lastEnd, f.stopErr = s.farewell(ctx, string(study))
	return f, nil
}

// rage runs the sweeps and all storms beside one another.
func (f *figures) rage(ctx context.Context, s *server) error {
	before, err := processorTime(os.Getpid())
	if err != nil {
		return err
	}
	storming, end := context.WithTimeout(ctx, f.options.lasting)
	defer end()
	f.ends = make([]ends, len(f.storms))
	var all sync.WaitGroup
	for i, storm := range f.storms {
		all.Go(func() { f.ends[i] = storm.rage(storming, s.address()) })
	}
	all.Go(func() { f.watch(storming, s) })
	began := time.Now()
	f.sweeps, err = sweep(ctx, f.options, s)
	all.Wait()
	if err != nil {
		return err
	}
	after, err := processorTime(os.Getpid())
	f.storming = (after - before).Seconds() / time.Since(began).Seconds()
	return err
}

// watch keeps the peaks of the gauges.
func (f *figures) watch(ctx context.Context, s *server) {
	for ctx.Err() == nil {
		if m, err := s.metrics(ctx); err == nil {
			f.peakGoroutines = max(f.peakGoroutines, m[goroutines])
			f.peakHeap = max(f.peakHeap, m[heap])
		}
		sleep(ctx, time.Second)
	}
}

// settleLimit is how long the server may take to be as before: longer than it lets
// a slow caller go on.
const settleLimit = 45 * time.Second

// settle waits until the server is as it was before, or for as long as it may take.
func (f *figures) settle(ctx context.Context, s *server) error {
	for began := time.Now(); ; sleep(ctx, 100*time.Millisecond) {
		m, err := s.metrics(ctx)
		if err != nil {
			return err
		}
		f.after, f.settled = m, time.Since(began)
		if f.idle() || f.settled > settleLimit {
			return nil
		}
	}
}

// idle reports whether nothing of the load is left.
func (f *figures) idle() bool {
	m := f.after
	return m[running] == 0 && m[waiting] == 0 && m[reading] == 0 && m[goroutines] <= f.before[goroutines]
}
