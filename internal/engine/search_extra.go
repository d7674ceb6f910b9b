package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/optimize"
)

// Rounded is the best answer on the grids that the study's variables state.
type Rounded struct {
	Values study.Changes `json:"values"`
	ToeFigures
	// Cost is by how much the figure minimised is worse than that of the exact
	// answer, degrees.
	Cost Number `json:"cost"`
	// AtPercentile is the figure at the percentile that a robust search minimises,
	// of which Cost is then; none of another search.
	AtPercentile Number `json:"atPercentile"`
	Held         bool   `json:"held"` // all limits
	// Proved says that every point of the grids within the bounds was tried; else the
	// values are the best found along the valley of those as good without the grids.
	Proved bool `json:"proved"`
}

// RobustResult says what an answer that serves a share of all cars comes to.
type RobustResult struct {
	Percentile float64 `json:"percentile"` // of the cars, such as 95
	StaticToe  string  `json:"toe"`        // of the cars: [ToeReSet] or [ToeAsBuilt]
	Figure     Number  `json:"figure"`     // at that percentile: of the answer, over cars that the search did not see
	Low        Number  `json:"low"`        // 95 % band of Figure by the number of those cars
	High       Number  `json:"high"`       // none where it reaches cars that fail
	Nominal    Number  `json:"nominal"`    // of the values best for a car as drawn
	Start      Number  `json:"start"`      // of the values as they stand
	// NominalValues are those best for a car as drawn.
	NominalValues study.Changes `json:"nominalValues"`
}

// grids returns what the shop can make of each variable; false where it can make
// anything.
func (s *searcher) grids() (grids []optimize.Grid, any bool) {
	for i := range s.doc.Search.Variables {
		v, p := &s.doc.Search.Variables[i], s.problem.Free[i].Parameter
		g := optimize.Grid{Step: s.doc.ToSolver(p, v.Grid)}
		for _, x := range v.Sizes {
			g.Sizes = append(g.Sizes, s.doc.ToSolver(p, x))
		}
		any = any || v.Grid > 0 || len(v.Sizes) > 0
		grids = append(grids, g)
	}
	return grids, any
}

// rounded returns the answer on the variables' grids by round, which rounds it;
// nil where no variable has one.
func (s *searcher) rounded(round func([]optimize.Grid) (*optimize.Rounded, error)) (*Rounded, error) {
	grids, any := s.grids()
	if !any {
		return nil, nil
	}
	r, err := round(grids)
	if err != nil {
		return nil, explain(err, "")
	}
	out := &Rounded{Values: s.values(r.Values), ToeFigures: toeFigures(r.Best), Cost: degrees(r.Cost.Radians()), Held: r.Held, Proved: r.Proved, AtPercentile: none}
	if r.Percentile != 0 {
		out.AtPercentile = degrees(r.Percentile.Radians())
	}
	return out, nil
}

// robust searches for the percentile of all cars that the study's tolerances make.
func (s *searcher) robust(ctx context.Context, settings *optimize.Settings) (*SearchResult, error) {
	p := optimize.RobustSearch{ToeSearch: s.problem, Share: s.doc.Search.Percentile / 100}
	p.AsBuilt = s.staticToe() == ToeAsBuilt
	for i := range s.doc.Tolerances {
		t, err := s.tolerance(&s.doc.Tolerances[i])
		if err != nil {
			return nil, err
		}
		p.Tolerances = append(p.Tolerances, t)
	}
	if len(p.Tolerances) == 0 {
		return nil, wrongf("search.percentile", "is of cars that differ, but the study has no tolerances: state them, or take it out")
	}
	nominal, can, err := s.find(ctx, settings.Within(0, nominalShare))
	if err != nil {
		return nil, err
	}
	p.ToeSearch, p.Nominal = s.problem, nominal
	r, err := optimize.SearchRobust(ctx, &p, settings.Within(nominalShare, robustShare))
	if err != nil {
		return nil, explain(err, "")
	}
	out := s.robustResult(nominal, can, r)
	if r.Values != nil {
		out.Rounded, err = s.rounded(func(g []optimize.Grid) (*optimize.Rounded, error) {
			return p.Round(ctx, r.Values, g, settings.Within(robustShare, 1))
		})
	}
	out.cut(ctx)
	return out, err
}

// What of a robust search is done once the nominal one has ended, and once the answer is
// found that is rounded then.
const nominalShare, robustShare = 0.1, 0.6

// staticToe returns what the study's cars do with static toe.
func (s *searcher) staticToe() string {
	if s.doc.Yield != nil && s.doc.Yield.KeepToe {
		return ToeAsBuilt
	}
	return ToeReSet
}

// robustResult puts the robust answer in the place of the nominal one.
func (s *searcher) robustResult(a *optimize.ToeAnswer, can *FeasibleResult, r *optimize.RobustAnswer) *SearchResult {
	out := s.result(a, can)
	if r.Values == nil {
		return out
	}
	out.Robust = &RobustResult{
		Percentile: s.doc.Search.Percentile, StaticToe: s.staticToe(), Figure: degrees(r.Percentile.Value.Radians()),
		Low: degrees(r.Percentile.Low.Radians()), High: degrees(r.Percentile.High.Radians()),
		Nominal: degrees(r.Nominal.Value.Radians()), Start: degrees(r.Start.Value.Radians()), NominalValues: out.Best.Values,
	}
	best, _, limits := s.problem.Figures(r.Values)
	out.Best.Values, out.Best.Scored = s.values(r.Values), s.scored(best, r.Values)
	out.Limits = s.limitResults(limits)
	out.AtBound = []AtBound{}
	out.Evaluations += r.Evaluations
	s.addSides(&out.Best)
	s.addScenarios(out)
	return out
}
