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
	r, err := prepare(ctx, &p, s)
	if err != nil {
		return Result{}, err
	}
	status := r.search()
	return r.result(status), nil
}

// prepare returns a run that has not begun.
func prepare(ctx context.Context, p *Problem, s *Settings) (*run, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	size := p.Model.Size()
	scale, err := newScale(&p.Objective, size.Residuals)
	if err != nil {
		return nil, err
	}
	return newRun(ctx, p, scale, s.WithDefaults(size.Variables)), nil
}

// run is the state of one call of Run.
type run struct {
	problem  *Problem
	scale    *scale
	settings Settings
	box      *unitBox
	polisher *polisher // made when first needed

	found    []local
	known    map[int]Polished // by their starts
	fraction func() float64   // of the work that is done

	best    float64 // objective of the best local so far
	bestX   []float64
	start   float64 // objective at the start
	largest float64 // objective at the worst point where a search began
}

func newRun(ctx context.Context, p *Problem, sc *scale, s Settings) *run {
	r := &run{
		problem: p, scale: sc, settings: s, known: map[int]Polished{},
		box: &unitBox{
			ctx: ctx, model: p.Model, variables: p.Variables,
			x: make([]float64, len(p.Variables)), budget: s.Evaluations,
		},
		best: math.Inf(1), start: math.NaN(),
	}
	for _, k := range s.Known {
		r.known[k.Start] = k
	}
	r.fraction = func() float64 {
		return float64(len(r.found)) / float64(max(r.settings.Restarts, len(r.found)+1))
	}
	return r
}

// search polishes the start and the restarts.
func (r *run) search() Status {
	if r.stopped(0) == NotRun && r.polish(0, r.problem.unitStart()) {
		r.start = r.found[0].began
	}
	for _, x := range r.problem.Also {
		if r.box.stopped() == NotRun {
			r.polish(unknown, r.problem.unit(x))
		}
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
		if r.stopped(i+1) != NotRun {
			continue // to those that are known
		}
		points.Point(i, u)
		r.polish(i+1, u)
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

// unknown is the start of a search that no other process makes.
const unknown = -1

// stopped returns the status that ends the run before a search, or NotRun to go on: one
// that is known is taken where the run is cancelled too.
func (r *run) stopped(start int) Status {
	s := r.box.stopped()
	if _, ok := r.known[start]; ok && s == Cancelled {
		return NotRun
	}
	return s
}

// polish runs one local search, or takes it where it is known. It returns false where the
// model cannot be evaluated where it begins.
func (r *run) polish(start int, u []float64) bool {
	l, ok := r.local(start, u)
	if !ok {
		return false
	}
	r.found = append(r.found, l)
	r.largest = math.Max(r.largest, l.began)
	if !l.broken && l.value < r.best {
		r.best, r.bestX = l.value, l.optimum(r.problem.Variables).X
	}
	r.report() // a search that others have made was not heard of yet
	return true
}

// local returns where a search ends.
func (r *run) local(start int, u []float64) (local, bool) {
	if k, ok := r.known[start]; ok {
		r.box.count += k.Evaluations
		return k.local(), k.U != nil
	}
	if r.settings.Made != nil {
		if k, ok := r.settings.Made(start); ok {
			r.box.count += k.Evaluations
			return k.local(), k.U != nil
		}
	}
	if r.polisher == nil {
		r.polisher = newPolisher(r.box, r.scale, r.settings.Iterations, r.report)
	}
	return r.polisher.run(u)
}

// report calls the progress function.
func (r *run) report() {
	r.settings.Progress(Progress{
		Evaluations: r.box.count,
		Best:        r.best,
		X:           r.bestX,
		Fraction:    math.Min(r.fraction(), 1),
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
