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
}

// NewSearchRun checks a study's search.
func NewSearchRun(d *study.Document, o SearchOptions) (*SearchRun, error) {
	s, err := newSearcher(d, &o)
	if err != nil {
		return nil, err
	}
	return &SearchRun{s, s.settings(&o)}, nil
}

// Variables returns how many the search has.
func (r *SearchRun) Variables() int { return len(r.problem.Free) }

// Polish searches from a shard's starts, from fewer where the context ends.
func (r *SearchRun) Polish(ctx context.Context, s Shard) ([]nlp.Polished, error) {
	found := r.foundShare()
	if len(r.problem.Limits) > 0 {
		found *= firstShare
	}
	list, err := optimize.PolishToe(ctx, &r.problem, r.settings.Within(0, found), s.Index, s.Of)
	return list, explain(err, "")
}

// Result searches from the starts that are not known yet, and answers.
func (r *SearchRun) Result(ctx context.Context, known []nlp.Polished) (*SearchResult, error) {
	r.known = known
	out, err := r.answer(ctx, r.settings)
	if err != nil {
		return nil, err
	}
	out.StartNote = r.startNote(out)
	return out, nil
}
