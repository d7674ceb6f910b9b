package nlp

import "context"

// LocalSearch makes single local searches of one problem, without restarts.
type LocalSearch struct {
	problem  *Problem
	polisher *polisher
}

// NewLocalSearch returns what searches a problem from one point at a time; nil settings
// mean defaults. It returns a [*ProblemError] for a problem that does not fit together.
func NewLocalSearch(ctx context.Context, p Problem, s *Settings) (*LocalSearch, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	size := p.Model.Size()
	scale, err := newScale(&p.Objective, size.Residuals)
	if err != nil {
		return nil, err
	}
	set := s.WithDefaults(size.Variables)
	box := &unitBox{ctx: ctx, model: p.Model, variables: p.Variables, x: make([]float64, size.Variables), budget: set.Evaluations}
	return &LocalSearch{&p, newPolisher(box, scale, set.Iterations, func() {})}, nil
}

// From returns where the search from x, moved into the ranges, ends, and how often it
// evaluated the model; false where the model cannot be evaluated at x.
func (s *LocalSearch) From(x []float64) (o Optimum, evaluations int, ok bool) {
	s.polisher.box.count = 0
	l, ok := s.polisher.run(s.problem.unit(x))
	if !ok {
		return Optimum{}, s.polisher.box.count, false
	}
	return l.optimum(s.problem.Variables), s.polisher.box.count, true
}
