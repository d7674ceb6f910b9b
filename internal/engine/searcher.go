package engine

import (
	"cmp"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// searcher turns a study's search into that of package optimize.
type searcher struct {
	*sweeper
	problem optimize.ToeSearch
	known   []nlp.Polished // local searches that were made already
}

// newSearcher makes a study's search ready, with what the options put in place of its own.
func newSearcher(d *study.Document, o *SearchOptions) (*searcher, error) {
	d = o.withTarget(d)
	if err := d.ReadyToSearch(); err != nil {
		return nil, explain(err, "")
	}
	sweep, err := newJudge(d, "")
	if err != nil {
		return nil, err
	}
	s := &searcher{sweeper: sweep}
	s.problem = optimize.ToeSearch{Base: sweep.base, Travels: sweep.grid.mm, Targets: targets(sweep.doc)}
	s.problem.Weights = weights(d, sweep.grid)
	for _, set := range []func(*SearchOptions) error{s.setMeasure, s.setFree, s.setSide, s.setScenarios, s.checkRods, s.setLimits} {
		if err := set(o); err != nil {
			return nil, err
		}
	}
	return s, nil
}

func (s *searcher) setMeasure(o *SearchOptions) error {
	switch name := cmp.Or(o.Minimise, s.doc.Search.Minimise, "rms"); name {
	case "rms":
		s.problem.Measure = optimize.RMS
	case "peak":
		s.problem.Measure = optimize.Peak
	default:
		return wrongf("minimise", "%.40q is not a figure to minimise, want rms or peak", name)
	}
	if s.doc.Search.Combine == "worst" {
		s.problem.Across = optimize.Worst
	}
	return nil
}

// setFree sets the variables with their bounds.
func (s *searcher) setFree(*SearchOptions) error {
	for _, v := range s.doc.Search.Variables {
		p, sides, err := solver.FindParameter(s.design, v.Parameter)
		if err != nil {
			return explain(err, "")
		}
		s.problem.Free = append(s.problem.Free, optimize.Free{
			Parameter: p, Sides: sides, Min: s.doc.ToSolver(p, v.Min), Max: s.doc.ToSolver(p, v.Max),
		})
	}
	return nil
}

// checkRods refuses a rod's own length as a variable where static toe is re-set in
// every set-up: any value would do.
func (s *searcher) checkRods(*SearchOptions) error {
	for i := range s.problem.Free {
		p := &s.problem.Free[i].Parameter
		if !p.RodLength() {
			continue
		}
		held := len(s.problem.Scenarios) == 0
		for _, up := range s.problem.Scenarios {
			held = held || up.Hold&solver.HoldToe != 0
		}
		if held {
			return wrongf("search.variables", "%s does nothing where static toe is re-set; let each set-up hold camber and caster alone, or take it out", p.Key)
		}
	}
	return nil
}

// setSide sets the sides judged.
func (s *searcher) setSide(o *SearchOptions) (err error) {
	s.problem.Judge, err = sidesJudged(o.Side)
	return err
}

// settings returns those of the run.
func (s *searcher) settings(o *SearchOptions) *optimize.Settings {
	out := &optimize.Settings{Seed: uint64(int64(given(o.Seed, s.doc.Search.Seed)))}
	if o.Progress != nil {
		var at []float64 // of which values are
		var values study.Changes
		best := none // until a part of the work has one, that of the part before
		out.Progress = func(p optimize.Progress) {
			if !math.IsInf(p.Best, 0) {
				best = degrees(p.Best)
			}
			if p.X != nil && !slices.Equal(p.X, at) {
				at, values = p.X, s.values(p.X)
			}
			o.Progress(Progress{Fraction: p.Fraction, Evaluations: p.Evaluations, Best: best, Values: values})
		}
	}
	return out
}

func degrees(radians float64) Number { return Number(solver.Angle(radians).Degrees()) }
