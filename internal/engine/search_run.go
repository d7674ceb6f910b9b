package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
)

// SearchRun is a search whose starts can be searched from in shards.
type SearchRun struct {
	*searcher
	settings *optimize.Settings
	last     optimize.Progress // of the search for values as drawn
}

// NewSearchRun checks a study's search.
func NewSearchRun(d *study.Document, o SearchOptions) (*SearchRun, error) {
	s, err := newSearcher(d, &o)
	if err != nil {
		return nil, err
	}
	return &SearchRun{searcher: s, settings: s.settings(&o)}, nil
}

// Variables returns how many the search has.
func (r *SearchRun) Variables() int { return len(r.problem.Free) }

// Polish searches from a shard's starts, from fewer where the context ends.
func (r *SearchRun) Polish(ctx context.Context, s Shard) ([]nlp.Polished, error) {
	found := r.foundShare()
	if len(r.problem.Limits) > 0 {
		found *= firstShare
	}
	settings := *r.settings
	if tell := settings.Progress; tell != nil {
		settings.Progress = func(p optimize.Progress) {
			r.last = p
			tell(p)
		}
	}
	list, err := optimize.PolishToe(ctx, &r.problem, settings.Within(0, found), s.Index, s.Of)
	return list, explain(err, "")
}

// triedShare is the part that the grid points tried by shards have in the progress of what
// follows the search.
const triedShare = 0.3

// TryGrids tries a shard's points of the variables' grids, none where no variable has one.
func (r *SearchRun) TryGrids(ctx context.Context, s Shard) ([]optimize.GridTried, error) {
	grids, any := r.grids()
	if !any {
		return nil, nil
	}
	settings := *r.settings
	if tell := settings.Progress; tell != nil {
		settings.Progress = func(p optimize.Progress) {
			now := r.last
			now.Fraction = p.Fraction
			tell(now)
		}
	}
	found := r.foundShare()
	list, err := r.problem.TryGrids(ctx, grids, settings.Within(found, found+triedShare*(1-found)), s.Index, s.Of)
	return list, explain(err, "")
}

// Result searches from the starts that are not known yet, tries the grid points that were not
// tried yet, and answers.
func (r *SearchRun) Result(ctx context.Context, known []nlp.Polished, tried []optimize.GridTried) (*SearchResult, error) {
	r.known, r.problem.Tried = known, tried
	out, err := r.answer(ctx, r.settings)
	if err != nil {
		return nil, err
	}
	out.StartNote = r.startNote(out)
	return out, nil
}
