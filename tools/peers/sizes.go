//go:build unix

package main

import (
	"context"
	"fmt"

	"toewright/optimize"
	"toewright/solver"
)

// growth is work that grows with a number.
type growth struct {
	name string
	unit string // what is counted
	at   []int
	do   func(n int) (func() error, error)
}

// sizes shows how work grows with its size.
func sizes(ctx context.Context, b *bench, p *page) error {
	s, _, err := load(b.dir, "double-wishbone", caseFiles[0].file, windowBump, windowStep)
	if err != nil {
		return err
	}
	p.section("Work against size", "Processor time of one item, least of five runs; where it stays the same the work is linear.")
	t := table{header: []string{"Work", "items", "an item, µs", "at each size"}}
	for _, g := range growths(ctx, s) {
		if err := g.measure(&t); err != nil {
			return err
		}
	}
	p.table(&t)
	return nil
}

func growths(ctx context.Context, s *subject) []growth {
	one := optimize.Parallel{Workers: 1}
	short, _ := solver.Grid(50, 50, 10) // a window of its own constants: it cannot fail
	return []growth{
		{"positions of a sweep", "position", []int{41, 161, 641, 2561}, func(n int) (func() error, error) {
			travels, err := solver.Grid(windowBump, windowBump, 2*windowBump/float64(n-1))
			if err != nil {
				return nil, err
			}
			w, err := newSweeper(s, travels)
			return w.sweep, err
		}},
		{"cars of a series", "car", []int{250, 1000, 4000, 16000}, func(n int) (func() error, error) {
			series := seriesOf(s, short)
			spread, err := series.Propagate()
			return func() error { _, err := series.Count(ctx, spread, optimize.Span{End: n}, one); return err }, err
		}},
		{"candidates of a map", "candidate", []int{256, 1024, 4096, 16384}, func(n int) (func() error, error) {
			m, err := mapOf(s, short, 32, n/32)
			return func() error { _, err := m.Fill(ctx, optimize.Span{End: m.Rows}, one); return err }, err
		}},
		{"combinations of a catalogue", "combination", []int{250, 1000, 4000, 16000}, func(n int) (func() error, error) {
			shelf, err := shelfOf(s, short, n)
			return func() error { _, err := shelf.Try(ctx, optimize.Span{End: n}, one); return err }, err
		}},
	}
}

// shelfOf returns a shelf of n combinations: two slots, one of ten choices.
func shelfOf(s *subject, travels []float64, n int) (*optimize.Shelf, error) {
	shelf := &optimize.Shelf{Judge: judgeOf(s, travels), Measure: optimize.RMS, Most: 100}
	for i, key := range [2]string{"tieRodOuterHeight", "tieRodInnerHeight"} {
		p, sides, err := solver.FindParameter(s.design, key)
		if err != nil {
			return nil, err
		}
		count := 10
		if i == 1 {
			count = n / 10
		}
		slot := optimize.Slot{Name: p.Label}
		for k := 1; k < count; k++ { // and the choice of leaving it as it is
			value := 20 * float64(k) / float64(count)
			slot.Parts = append(slot.Parts, optimize.Part{Name: fmt.Sprint(k), Price: float64(k),
				Changes: []solver.Change{{Parameter: p, Sides: sides, Value: value}}})
		}
		shelf.Slots = append(shelf.Slots, slot)
	}
	return shelf, nil
}

func (g *growth) measure(t *table) error {
	items, each := "", ""
	least := 0.0
	for i, n := range g.at {
		do, err := g.do(n)
		if err != nil {
			return err
		}
		var times []float64
		for range 5 {
			ns, err := timed(do)
			if err != nil {
				return err
			}
			times = append(times, ns/float64(n))
		}
		least = spreadOf(times).least
		if i > 0 {
			items, each = items+", ", each+", "
		}
		items, each = items+fmt.Sprint(n), each+micro(least)
	}
	t.row(g.name, items, micro(least), each)
	return nil
}
