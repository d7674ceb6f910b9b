package engine

import (
	"context"
	"errors"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
)

// FeasibleResult is what [Feasible] returns: what of a search's window and limits can be
// had within its variables' bounds, whatever the toe change.
type FeasibleResult struct {
	Units study.Units `json:"units"`
	// Feasible says that Values, changes of a candidate, reach the window and hold all
	// limits in every scenario.
	Feasible bool          `json:"feasible"`
	Values   study.Changes `json:"values,omitzero"`
	// Conflicts are limits that no values found hold together.
	Conflicts []LimitConflict `json:"conflicts,omitzero"`
	// Reach is the nearest to the window, where no values found reach it.
	Reach *NearestReach `json:"reach,omitzero"`
}

// LimitConflict is limits in each other's way, or one in that of the bounds: any one of
// them left out, values hold the others.
type LimitConflict struct {
	// Limits are those as they stand at Nearest, each in the scenario that has least room.
	Limits []LimitResult `json:"limits"`
	// Nearest are the values that break the worst of them least and hold all limits that
	// are in no conflict; none where no car has a value of them at all.
	Nearest study.Changes `json:"nearest,omitzero"`
}

// NearestReach is the car that comes nearest to the window's ends.
type NearestReach struct {
	Values   study.Changes `json:"values"`
	Bump     float64       `json:"bump"` // reached of the window, in the file's unit, positive
	Droop    float64       `json:"droop"`
	Link     string        `json:"link"` // that ends the travel first
	Scenario string        `json:"scenario,omitzero"`
	// Problem says why there are no values: no car found gets to travel 0 in Scenario.
	Problem string `json:"problem,omitzero"`
}

// Names returns the limits' names in their order.
func (c *LimitConflict) Names() (names []string) {
	for i := range c.Limits {
		names = append(names, c.Limits[i].Name)
	}
	return names
}

// names returns those of the limits in all conflicts.
func (r *FeasibleResult) names() (names []string) {
	for i := range r.Conflicts {
		names = append(names, r.Conflicts[i].Names()...)
	}
	return names
}

// Feasible says before a search what its limits and window leave: values that hold them
// all, or the limits in each other's way with the nearest that can be had. It costs a
// fraction of the search.
func Feasible(ctx context.Context, d *study.Document, o SearchOptions) (*FeasibleResult, error) {
	s, err := newSearcher(d, &o)
	if err != nil {
		return nil, err
	}
	can, _, err := s.feasible(ctx, s.settings(&o))
	return can, err
}

// feasible is [Feasible] of a search made ready.
func (s *searcher) feasible(ctx context.Context, settings *optimize.Settings) (*FeasibleResult, []float64, error) {
	f, err := s.problem.Feasible(ctx, settings.Seed)
	if err != nil {
		return nil, nil, explain(err, "")
	}
	out := &FeasibleResult{Units: s.doc.Units, Feasible: f.Values != nil}
	if out.Feasible {
		out.Values = s.values(f.Values)
	}
	for i := range f.Conflicts {
		out.Conflicts = append(out.Conflicts, s.conflict(&f.Conflicts[i]))
	}
	if f.Short != nil {
		out.Reach = s.nearestReach(f.Short)
	}
	return out, f.Values, nil
}

// conflict returns limits in each other's way as they stand.
func (s *searcher) conflict(c *optimize.Conflict) (out LimitConflict) {
	if c.Values == nil {
		for _, k := range c.Limits {
			out.Limits = append(out.Limits, s.unmeasured(&s.doc.Search.Limits[k], errNowhere))
		}
		return out
	}
	out.Nearest = s.values(c.Values)
	for i, k := range c.Limits {
		var tightest *LimitResult
		for j := i; j < len(c.States); j += len(c.Limits) {
			l := s.stands(&s.doc.Search.Limits[k], c.States[j])
			if tightest == nil || l.Room() < tightest.Room() {
				tightest = &l
			}
		}
		out.Limits = append(out.Limits, *tightest)
	}
	return out
}

// errNowhere is why a limit has no value.
var errNowhere = errors.New("no car within the bounds gets to where it is measured")

func (s *searcher) nearestReach(f *optimize.Shortfall) *NearestReach {
	if f.Values == nil {
		return &NearestReach{Scenario: f.Scenario, Problem: s.doc.Units.Sentence(bare(f.Fault))}
	}
	mm := s.doc.Units.FromMillimetres
	return &NearestReach{Values: s.values(f.Values), Bump: mm(f.Bump), Droop: mm(f.Droop), Link: f.Link, Scenario: f.Scenario}
}

// find searches, and once more from values that hold all limits where that ended with
// one broken though there are such. Where there are none it says what cannot be had.
func (s *searcher) find(ctx context.Context, settings *optimize.Settings) (a *optimize.ToeAnswer, can *FeasibleResult, err error) {
	made := *settings
	made.Known = s.known
	settings = &made
	part := settings
	if len(s.problem.Limits) > 0 {
		part = settings.Within(0, firstShare)
	}
	for {
		if a, err = optimize.SearchToe(ctx, &s.problem, part); err != nil {
			return nil, nil, explain(err, "")
		}
		if ctx.Err() != nil || a.Values != nil && allHeld(a.Limits) {
			break
		}
		var hold []float64
		if can, hold, err = s.feasible(ctx, settings); err != nil || hold == nil || s.problem.Also != nil {
			break // where it was cancelled the best so far stands
		}
		s.problem.Also = [][]float64{hold}
		part = settings.Within(firstShare, 1)
	}
	if a.Values == nil {
		return nil, nil, s.noAnswer(ctx, can)
	}
	if can != nil && can.Feasible {
		can = nil
	}
	return a, can, nil
}

// firstShare is the part that the first search has in the progress where there may be a
// second.
const firstShare = 0.7

func allHeld(list []optimize.LimitState) bool {
	return !slices.ContainsFunc(list, func(l optimize.LimitState) bool { return !l.Held })
}
