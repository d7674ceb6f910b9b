//go:build unix

package main

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"sync"
	"time"

	"toewright/optimize"
	"toewright/solver"
)

// judgeOf returns a judge of the left wheel of s over travels.
func judgeOf(s *subject, travels []float64) optimize.Judge {
	return optimize.Judge{Base: s.base, Hold: solver.HoldAll, Travels: travels, Sides: solver.LeftOnly}
}

// seriesOf returns a series of cars that are off in every coordinate.
func seriesOf(s *subject, travels []float64) *optimize.Series {
	out := &optimize.Series{Judge: judgeOf(s, travels), Seed: 1}
	for _, c := range coordinates(s.design) {
		out.Tolerances = append(out.Tolerances, optimize.Tolerance{Parameter: c.Parameter, Distribution: optimize.Distribution{Spread: 0.5}})
	}
	return out
}

// asBuilt returns the series with static toe as the cars leave the line, the tie rod's own
// length off too.
func asBuilt(s *subject, of *optimize.Series) (*optimize.Series, error) {
	out := *of
	p, sides, err := solver.FindParameter(s.design, "tieRodLength")
	if err != nil {
		return nil, err
	}
	out.Tolerances = append(out.Tolerances[:len(out.Tolerances):len(out.Tolerances)],
		optimize.Tolerance{Parameter: p, Sides: sides, Distribution: optimize.Distribution{Spread: 0.5}})
	drawn, err := s.base.Assemble(nil, solver.HoldAll)
	if err != nil {
		return nil, err
	}
	return &out, out.LeaveToe(drawn)
}

// mapOf returns a map over the heights of the tie rod's balls.
func mapOf(s *subject, travels []float64, columns, rows int) (*optimize.ParameterMap, error) {
	m := &optimize.ParameterMap{Judge: judgeOf(s, travels), Columns: columns, Rows: rows}
	for i, key := range [2]string{"tieRodOuterHeight", "tieRodInnerHeight"} {
		p, sides, err := solver.FindParameter(s.design, key)
		if err != nil {
			return nil, err
		}
		*[2]*optimize.Free{&m.X, &m.Y}[i] = optimize.Free{Parameter: p, Sides: sides, Min: -20, Max: 20}
	}
	return m, nil
}

// crowds measures many cars at once on all processors against so many sweeps of the toe.
func crowds(ctx context.Context, b *bench, p *page) error {
	s, _, err := load(b.dir, "double-wishbone", caseFiles[0].file, windowBump, windowStep)
	if err != nil {
		return err
	}
	m, err := mapOf(s, s.travels, 64, 64)
	if err != nil {
		return err
	}
	series := seriesOf(s, s.travels)
	built, err := asBuilt(s, series)
	if err != nil {
		return err
	}
	cars := optimize.Span{End: 100_000}
	count := func(s *optimize.Series) func() error {
		return func() error {
			spread, err := s.Propagate()
			if err == nil {
				_, err = s.Count(ctx, spread, cars, optimize.Parallel{})
			}
			return err
		}
	}
	p.section(fmt.Sprintf("Many cars on %d processors, each through 41 positions", runtime.GOMAXPROCS(0)),
		"Every car is drawn or changed, assembled with its setpoints, moved and judged. The ratio compares its processor time "+
			"with that of a bare sweep that gives the toe alone, as these do, on as many processors; busy is the share of the processors' time in which Go had work for them.")
	t := table{header: []string{"Job", "cars", "elapsed, s", "a car, µs", "a sweep, µs", "ratio", "busy"}}
	for _, j := range []struct {
		name string
		cars int
		do   func() error
	}{
		{"tolerance, static toe set", cars.Len(), count(series)},
		{"tolerance, as built", cars.Len(), count(built)},
		{"map, 64 by 64", 64 * 64, func() error { _, err := m.Fill(ctx, optimize.Span{End: m.Rows}, optimize.Parallel{}); return err }},
	} {
		if err := crowd(s, j.name, j.cars, j.do, &t); err != nil {
			return err
		}
	}
	p.table(&t)
	return nil
}

// crowd measures one job beside sweeps taken just before and after.
func crowd(s *subject, name string, cars int, do func() error, t *table) error {
	before, err := sweepOnAll(s)
	if err != nil {
		return err
	}
	work, wall, used := newWorkMeter(), time.Now(), processorTime()
	if err := do(); err != nil {
		return err
	}
	elapsed, spent := time.Since(wall), processorTime()-used
	busy := work.busy()
	after, err := sweepOnAll(s)
	if err != nil {
		return err
	}
	sweep, car := (before+after)/2, float64(spent)/float64(cars)
	t.row(name, fmt.Sprint(cars), fmt.Sprintf("%.2f", elapsed.Seconds()), micro(car), micro(sweep), ratio(car/sweep), fmt.Sprintf("%.0f %%", 100*busy))
	return nil
}

// sweepOnAll returns the processor time of a sweep of the toe while all processors sweep, ns:
// two that share a core are slower than one alone.
func sweepOnAll(s *subject) (float64, error) {
	const each = 10_000
	n := runtime.GOMAXPROCS(0)
	errs := make([]error, n)
	used := processorTime()
	var wg sync.WaitGroup
	for i := range n {
		wg.Go(func() {
			w, err := newSweeper(s, s.travels)
			if err == nil {
				w.in.ToeOnly = true
			}
			for k := 0; err == nil && k < each; k++ {
				err = w.sweep()
			}
			errs[i] = err
		})
	}
	wg.Wait()
	return float64(processorTime()-used) / float64(n*each), errors.Join(errs...)
}
