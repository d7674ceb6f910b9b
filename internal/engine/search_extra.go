package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// Rounded is the best answer on the grids that the study's variables state.
type Rounded struct {
	Values study.Changes `json:"values"`
	ToeFigures
	// Cost is by how much the figure minimised is worse than that of the exact
	// answer, degrees.
	Cost Number `json:"cost"`
	Held bool   `json:"held"` // all limits
}

// RobustResult says what an answer that serves a share of all cars comes to.
type RobustResult struct {
	Percentile float64 `json:"percentile"` // of the cars, such as 95
	StaticToe  string  `json:"toe"`        // of the cars: [ToeReSet] or [ToeAsBuilt]
	Figure     Number  `json:"figure"`     // at that percentile: of the answer
	Nominal    Number  `json:"nominal"`    // of the values best for a car as drawn
	Start      Number  `json:"start"`      // of the values as they stand
	// NominalValues are those best for a car as drawn.
	NominalValues study.Changes `json:"nominalValues"`
}

// rounded returns the answer on the variables' grids, nil where none states one.
func (s *searcher) rounded(x []float64) *Rounded {
	steps := make([]float64, len(s.problem.Free))
	any := false
	for i, v := range s.doc.Search.Variables {
		if v.Grid > 0 {
			steps[i], any = s.doc.ToSolver(s.problem.Free[i].Parameter, v.Grid), true
		}
	}
	if !any {
		return nil
	}
	r, err := s.problem.Round(x, steps)
	if err != nil {
		return nil
	}
	return &Rounded{s.values(r.Values), toeFigures(r.Best), degrees(r.Cost.Radians()), r.Held}
}

// robust searches for the percentile of all cars that the study's tolerances make.
func (s *searcher) robust(ctx context.Context, o *SearchOptions) (*SearchResult, error) {
	p := optimize.RobustSearch{ToeSearch: s.problem, Share: s.doc.Search.Percentile / 100}
	p.AsBuilt = s.staticToe() == ToeAsBuilt
	for i := range s.doc.Tolerances {
		t, err := s.tolerance(&s.doc.Tolerances[i])
		if err != nil {
			return nil, err
		}
		if t.Sides != solver.RightOnly || s.problem.Judge != solver.LeftOnly {
			p.Tolerances = append(p.Tolerances, t)
		}
	}
	if len(p.Tolerances) == 0 {
		return nil, wrongf("search.percentile", "is of cars that differ, but the study has no tolerances: state them, or take it out")
	}
	nominal, err := optimize.SearchToe(ctx, &s.problem, s.settings(o))
	if err != nil {
		return nil, explain(err, "")
	}
	if nominal.Values == nil {
		return nil, s.noAnswer(ctx, nominal.Result.Status)
	}
	r, err := optimize.SearchRobust(ctx, &p, s.settings(o))
	if err != nil {
		return nil, explain(err, "")
	}
	return s.robustResult(nominal, r), nil
}

// staticToe returns what the study's cars do with static toe.
func (s *searcher) staticToe() string {
	if s.doc.Yield != nil && s.doc.Yield.KeepToe {
		return ToeAsBuilt
	}
	return ToeReSet
}

// robustResult puts the robust answer in the place of the nominal one.
func (s *searcher) robustResult(a *optimize.ToeAnswer, r *optimize.RobustAnswer) *SearchResult {
	out := s.result(a)
	if r.Values == nil {
		return out
	}
	out.Robust = &RobustResult{
		Percentile: s.doc.Search.Percentile, StaticToe: s.staticToe(), Figure: degrees(r.Percentile.Radians()),
		Nominal: degrees(r.Nominal.Radians()), Start: degrees(r.Start.Radians()), NominalValues: out.Best.Values,
	}
	best, each, limits := s.problem.Figures(r.Values)
	out.Best.Values, out.Best.ToeFigures = s.values(r.Values), toeFigures(best)
	for i := range out.Scenarios {
		out.Scenarios[i].ToeFigures = toeFigures(each[i])
	}
	out.Limits = s.limitResults(limits)
	out.Rounded = nil // it is of the car as drawn: on the grid too the percentile is another question
	out.AtBound = []AtBound{}
	out.Evaluations += r.Evaluations
	s.addSides(&out.Best)
	return out
}
