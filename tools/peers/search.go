//go:build unix

package main

import (
	"context"
	"fmt"
	"strconv"

	"toewright/optimize"
	"toewright/solver"
)

// searchCase is the known optimum of a case.
type searchCase struct {
	Variables []struct {
		Parameter string  `json:"parameter"`
		Min       float64 `json:"min"`
		Max       float64 `json:"max"`
	} `json:"variables"`
	Best struct {
		RMS struct {
			Value float64 `json:"value"`
		} `json:"rms"`
	} `json:"best"`
}

// bounds returns the arguments by which the tools know the box.
func (c *searchCase) bounds() []string {
	var low, high []string
	for _, v := range c.Variables {
		low = append(low, strconv.FormatFloat(v.Min, 'g', -1, 64))
		high = append(high, strconv.FormatFloat(v.Max, 'g', -1, 64))
	}
	return append(low, high...)
}

// problem returns the search as ours takes it.
func (c *searchCase) problem(s *subject) (*optimize.ToeSearch, error) {
	p := &optimize.ToeSearch{Base: s.base, Measure: optimize.RMS, Judge: solver.LeftOnly, Travels: s.travels}
	for _, v := range c.Variables {
		q, sides, err := solver.FindParameter(s.design, v.Parameter)
		if err != nil {
			return nil, err
		}
		p.Free = append(p.Free, optimize.Free{Parameter: q, Sides: sides, Min: v.Min, Max: v.Max})
	}
	return p, nil
}

// seeker is a way to search.
type seeker struct {
	label string
	once  bool // slow: asked in one round only
	find  func(ctx context.Context) (*answer, error)
	times []float64
	last  *answer
}

// search measures the search of three variables to the known optimum.
func search(rounds int, quick bool) part {
	return func(ctx context.Context, b *bench, p *page) error {
		s, c, err := load(b.dir, "double-wishbone", caseFiles[0].file, 50, 5)
		if err != nil {
			return err
		}
		ours, err := ownSeeker(s, &c.Search)
		if err != nil {
			return err
		}
		seekers := append([]*seeker{ours}, b.seekers(s, &c.Search, quick)...)
		for round := range rounds {
			for _, k := range seekers {
				if round > 0 && k.once {
					continue
				}
				if err := k.ask(ctx); err != nil {
					return err
				}
			}
		}
		p.section("Search of three variables, 21 positions, rms",
			fmt.Sprintf("Outer and inner tie rod ball height and steering-arm length of the double wishbone; the known optimum is %.6f deg. "+
				"Ours polishes starts spread over the bounds with exact derivatives.", c.Search.Best.RMS.Value))
		t := table{header: []string{"Tool", "median, ms", "× ours", "cars", "end, deg", "above the optimum"}}
		for _, k := range seekers {
			k.report(&t, spreadOf(ours.times).median, c.Search.Best.RMS.Value)
		}
		p.table(&t)
		return nil
	}
}

func ownSeeker(s *subject, c *searchCase) (*seeker, error) {
	p, err := c.problem(s)
	if err != nil {
		return nil, err
	}
	return &seeker{label: "ours", find: func(ctx context.Context) (*answer, error) {
		a := &answer{}
		ns, err := timed(func() error {
			r, err := optimize.SearchToe(ctx, p, nil)
			if err == nil {
				a.best, a.evaluations = r.Best.RMS.Degrees(), r.Result.Evaluations
			}
			return err
		})
		a.times = []float64{ns}
		return a, err
	}}, nil
}

func (b *bench) seekers(s *subject, c *searchCase, quick bool) []*seeker {
	nlopt := b.program("globalsearch")
	evolution := script("evolution.py")
	shared := b.program("shared.so").args[0]
	by := func(t tool, args ...string) func(context.Context) (*answer, error) {
		args = append(append([]string{s.file}, args...), c.bounds()...)
		return func(ctx context.Context) (*answer, error) { return t.ask(ctx, args...) }
	}
	out := []*seeker{
		{label: "NLopt DIRECT-L and SBPLX, sweep in C", find: by(nlopt, "3")},
		{label: "scipy differential evolution, sweep in C", find: by(evolution, shared)},
	}
	if !quick {
		out = append(out, &seeker{label: "scipy differential evolution, fsolve", once: true, find: by(evolution, "-")})
	}
	return out
}

func (k *seeker) ask(ctx context.Context) error {
	a, err := k.find(ctx)
	if err != nil {
		return err
	}
	k.times, k.last = append(k.times, a.times...), a
	return nil
}

func (k *seeker) report(t *table, own, optimum float64) {
	x := spreadOf(k.times)
	t.row(k.label, fmt.Sprintf("%.1f", x.median/1e6), ratio(x.median/own), fmt.Sprint(k.last.evaluations),
		fmt.Sprintf("%.6f", k.last.best), fmt.Sprintf("%.4f %%", 100*(k.last.best/optimum-1)))
}
