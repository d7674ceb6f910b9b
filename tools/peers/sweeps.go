//go:build unix

package main

import (
	"context"
	"fmt"
	"slices"

	"toewright/solver"
)

// rival is a tool that sweeps, with the number of its sweeps in a round.
type rival struct {
	tool
	label   string
	repeats int
	kinds   []string // of suspension that it takes
}

func (b *bench) rivals() []rival {
	corners := []string{"double-wishbone", "strut", "multi-link"}
	all := append(corners, "solid-axle")
	return []rival{
		{b.program("closedform"), "C, closed form", 50, corners[:1]},
		{b.program("multibody"), "Simbody", 5, all},
		{b.program("constraints"), "libslvs", 3, corners},
		{script("kinematics.py"), "scipy fsolve", 3, all},
	}
}

// sweeper moves the left wheel of a base car.
type sweeper struct {
	axle *solver.Axle
	ws   *solver.Workspace
	in   solver.SweepInput
	out  [2]solver.Curve
}

func newSweeper(s *subject, travels []float64) (*sweeper, error) {
	axle, err := s.base.Assemble(nil, solver.HoldAll)
	if err != nil {
		return nil, err
	}
	w := &sweeper{axle: axle, ws: solver.NewWorkspace()}
	w.in = solver.SweepInput{Travels: travels, Sides: solver.LeftOnly}
	return w, nil
}

func (w *sweeper) sweep() error { return w.axle.Sweep(w.ws, &w.in, &w.out) }

// toes returns those of the last sweep, deg.
func (w *sweeper) toes() []float64 {
	var out []float64
	for _, p := range w.out[solver.Left].Positions {
		out = append(out, p.Toe.Degrees())
	}
	return out
}

// sweeps measures a sweep of every kind by every tool that takes it.
func sweeps(rounds int) part {
	return func(ctx context.Context, b *bench, p *page) error {
		p.section("One wheel through 41 positions over ±80 mm",
			"Every tool gives the toe at each position within "+fmt.Sprint(toeLimit)+" deg of the case's own figure, or the run fails. "+
				"Ours and the closed form in C also give camber, caster and kingpin inclination. A solid axle moves both wheels.")
		t := table{header: []string{"Linkage", "Tool", "least, µs", "median, µs", "× ours"}}
		for _, c := range caseFiles {
			s, _, err := load(b.dir, c.name, c.file, windowBump, windowStep)
			if err != nil {
				return err
			}
			if err := compareSweeps(ctx, b, s, rounds, &t); err != nil {
				return err
			}
		}
		p.table(&t)
		return nil
	}
}

func compareSweeps(ctx context.Context, b *bench, s *subject, rounds int, t *table) error {
	ours, err := newSweeper(s, s.travels)
	if err != nil {
		return err
	}
	rivals := b.rivals()
	times := make([][]float64, len(rivals)+1)
	for range rounds {
		for i := range rivals {
			r := &rivals[i]
			if !slices.Contains(r.kinds, s.name) {
				continue
			}
			a, err := r.ask(ctx, s.file, fmt.Sprint(r.repeats))
			if err == nil {
				err = s.check(r.label, a.toes)
			}
			if err != nil {
				return err
			}
			times[i] = append(times[i], a.times...)
		}
		for range 5 {
			ns, err := timed(ours.sweep)
			if err != nil {
				return err
			}
			times[len(rivals)] = append(times[len(rivals)], ns)
		}
	}
	if err := s.check("ours", ours.toes()); err != nil {
		return err
	}
	own := spreadOf(times[len(rivals)])
	t.row(s.name, "ours", micro(own.least), micro(own.median), "1")
	for i := range rivals {
		if len(times[i]) > 0 {
			x := spreadOf(times[i])
			t.row("", rivals[i].label, micro(x.least), micro(x.median), ratio(x.median/own.median))
		}
	}
	return nil
}
