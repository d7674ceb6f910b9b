package nlp

import (
	"context"
	"math"
)

// Run searches the box of the problem's variables for the global minimum of its
// objective. It returns a [*ProblemError] for a problem that does not fit
// together; every other ending, cancellation included, is the Status of the
// result, which always holds the best point so far. Nil settings mean defaults.
func Run(ctx context.Context, p Problem, s *Settings) (Result, error) {
	if err := p.check(); err != nil {
		return Result{}, err
	}
	size := p.Model.Size()
	scale, err := newScale(&p.Objective, size.Residuals)
	if err != nil {
		return Result{}, err
	}
	r := newRun(ctx, &p, scale, s.WithDefaults(size.Variables))
	status := r.search()
	return r.result(status), nil
}

// run is the state of one call of Run.
type run struct {
	problem  *Problem
	scale    *scale
	settings Settings
	box      *unitBox
	polisher *polisher // made when first needed

	found   []local
	best    float64 // objective of the best local so far
	start   float64 // objective at the start
	largest float64 // objective at the worst point where a search began
}

func newRun(ctx context.Context, p *Problem, sc *scale, s Settings) *run {
	return &run{
		problem: p, scale: sc, settings: s,
		box: &unitBox{
			ctx: ctx, model: p.Model, variables: p.Variables,
			x: make([]float64, len(p.Variables)), budget: s.Evaluations,
		},
		best: math.Inf(1), start: math.NaN(),
	}
}

// search polishes the start and the restarts.
func (r *run) search() Status {
	if s := r.box.stopped(); s != NotRun {
		return s
	}
	if began, ok := r.polish(r.problem.unitStart()); ok {
		r.start = began
	}
	for _, x := range r.problem.Also {
		if s := r.box.stopped(); s != NotRun {
			return s
		}
		r.polish(r.problem.unit(x))
	}
	if s := r.restart(); s != NotRun {
		return s
	}
	if len(r.found) == 0 {
		return NotEvaluable
	}
	return Converged
}

// fewAgree is the share of the searches that have to end at the best value before
// it is taken for the least there is; mostAgain bounds the restarts that look for
// more, as a multiple of those asked for.
const fewAgree, mostAgain = 1.0 / 6, 4

// restart polishes spread points until enough searches have run, and more where few
// of them agree.
func (r *run) restart() Status {
	points, u := NewHalton(len(r.problem.Variables), r.settings.Seed), r.problem.unitStart()
	for i := 0; i < drawsPerRestart*mostAgain*r.settings.Restarts && r.wantsMore(i); i++ {
		if s := r.box.stopped(); s != NotRun {
			return s
		}
		points.Point(i, u)
		r.polish(u)
	}
	return r.box.stopped()
}

// wantsMore reports whether another search is to begin after so many draws.
func (r *run) wantsMore(draws int) bool {
	n, asked := len(r.found), r.settings.Restarts
	if n < asked {
		return draws < drawsPerRestart*asked
	}
	return n < mostAgain*asked && float64(agreeing(r.found, r.largest)) < fewAgree*float64(n)
}

// polish runs one local search and returns the objective where it began. It
// returns false where the model cannot be evaluated there.
func (r *run) polish(u []float64) (began float64, ok bool) {
	if r.polisher == nil {
		r.polisher = newPolisher(r.box, r.scale, r.settings.Iterations, r.report)
	}
	l, ok := r.polisher.run(u)
	if !ok {
		return 0, false
	}
	r.found = append(r.found, l)
	r.largest = math.Max(r.largest, l.began)
	if !l.broken {
		r.best = math.Min(r.best, l.value)
	}
	return l.began, true
}

// report calls the progress function.
func (r *run) report() {
	done := float64(len(r.found)) / float64(max(r.settings.Restarts, len(r.found)+1))
	r.settings.Progress(Progress{
		Evaluations: r.box.count,
		Best:        r.best,
		Fraction:    math.Min(done, 1),
	})
}

// result puts together what a search that ended with a status has found.
func (r *run) result(status Status) Result {
	out := Result{Status: status, Start: r.start, Evaluations: r.box.count}
	out.summarise(r.found, r.problem, r.largest)
	if status == Converged {
		out.Status = r.found[0].status // sorted, best first
	}
	return out
}
