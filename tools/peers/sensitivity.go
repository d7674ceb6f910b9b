//go:build unix

package main

import (
	"context"
	"fmt"
	"strings"

	"toewright/solver"
)

// coordinates returns every coordinate of every hardpoint of a design.
func coordinates(d *solver.Design) []solver.Change {
	var by []solver.Change
	for _, p := range solver.Parameters(d) {
		if strings.Contains(p.Key, ".") {
			by = append(by, solver.Change{Parameter: p})
		}
	}
	return by
}

// sensitivity measures the exact derivatives of 21 toes by all coordinates against
// a plain sweep of the same positions.
func sensitivity(rounds int) part {
	return func(_ context.Context, b *bench, p *page) error {
		p.section("Derivatives of the toe by every coordinate, 21 positions",
			"Exact derivatives, tangents of the static position included, against a sweep without them.")
		t := table{header: []string{"Linkage", "coordinates", "sweep, µs", "with derivatives, µs", "ratio"}}
		for _, c := range caseFiles {
			s, _, err := load(b.dir, c.name, c.file, 50, 5)
			if err != nil {
				return err
			}
			if err := compareSensitivity(s, rounds, &t); err != nil {
				return err
			}
		}
		p.table(&t)
		return nil
	}
}

func compareSensitivity(s *subject, rounds int, t *table) error {
	plain, err := newSweeper(s, s.travels)
	if err != nil {
		return err
	}
	exact, err := newSweeper(s, s.travels)
	if err != nil {
		return err
	}
	by := coordinates(s.design)
	derive := func() error {
		if exact.in.By, err = exact.axle.Tangents(by); err != nil {
			return err
		}
		return exact.sweep()
	}
	var a, d []float64
	for range 5 * rounds {
		x, err := timed(plain.sweep)
		if err != nil {
			return err
		}
		y, err := timed(derive)
		if err != nil {
			return err
		}
		a, d = append(a, x), append(d, y)
	}
	x, y := spreadOf(a), spreadOf(d)
	t.row(s.name, fmt.Sprint(len(by)), micro(x.median), micro(y.median), ratio(y.median/x.median))
	return nil
}
