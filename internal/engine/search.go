package engine

import (
	"context"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
)

// SearchOptions say how a search runs. The zero value runs the study's own.
type SearchOptions struct {
	// Minimise is "rms" or "peak"; where empty, what the study says.
	Minimise string `json:"minimise,omitzero"`
	// Side is the wheel judged: "left", "right" or, as where empty, "both", of which
	// the worse is the car's.
	Side string `json:"side,omitzero"`
	// TargetOf names the car whose toe change is wanted, TargetSlope the degrees by
	// unit of travel, in place of the study's target.
	TargetOf    string   `json:"targetOf,omitzero"`
	TargetSlope *float64 `json:"targetSlope,omitzero"`
	// Seed of the restarts; nil is the study's. The same seed gives the same answer.
	Seed *int `json:"seed,omitzero"`
	// Progress, if not nil, is called often and must return soon.
	Progress func(Progress) `json:"-"`
}

// Search looks for the values of the study's variables, within their bounds, that
// bring the toe change nearest to the target. A call that is cancelled returns the
// best so far, which says that it has not converged, or the context's error where
// there is none yet. It is an error where no values within the bounds let the car
// reach the window.
func Search(ctx context.Context, d *study.Document, o SearchOptions) (*SearchResult, error) {
	r, err := NewSearchRun(d, o)
	if err != nil {
		return nil, err
	}
	return r.Result(ctx, nil, nil)
}

// answer searches, and puts what it finds on the grids stated.
func (s *searcher) answer(ctx context.Context, settings *optimize.Settings) (*SearchResult, error) {
	if s.doc.Search.Percentile != 0 {
		return s.robust(ctx, settings)
	}
	found := s.foundShare()
	answer, can, err := s.find(ctx, settings.Within(0, found))
	if err != nil {
		return nil, err
	}
	out := s.result(answer, can)
	out.Rounded, err = s.rounded(func(g []optimize.Grid) (*optimize.Rounded, error) {
		return s.problem.Round(ctx, answer.Values, g, settings.Within(found, 1))
	})
	out.cut(ctx)
	return out, err
}

// foundShare returns the part that the search for values as drawn has in the progress: less
// than the whole where its answer is rounded or begins another search.
func (s *searcher) foundShare() float64 {
	_, any := s.grids()
	switch {
	case s.doc.Search.Percentile != 0:
		return nominalShare
	case any:
		return 0.4
	}
	return 1
}

// cut says of an answer that was cancelled on the way that it is not all there might be.
func (r *SearchResult) cut(ctx context.Context) {
	if ctx.Err() != nil {
		r.Converged, r.Status = false, nlp.Cancelled.String()
	}
}

// noAnswer says why there are no values, and with can, which may be nil, what is nearest.
func (s *searcher) noAnswer(ctx context.Context, can *FeasibleResult) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	w, there, remedy := s.window, "", "bounds or window"
	if slices.ContainsFunc(s.doc.Search.Limits, func(l study.Limit) bool { return l.At == study.AtLock }) {
		there, remedy = ", and full lock there as a limit asks", "bounds, window or steering.lock"
	}
	nearest := ""
	if can != nil {
		nearest = ". " + strings.Join(can.Words(s.plainly()), " ")
	}
	e := wrongf("search", "no values within the bounds let the car reach its window, %g %s of droop to %g %s of bump, in every scenario%s; make %s smaller%s",
		w.Droop, s.doc.Units, w.Bump, s.doc.Units, there, remedy, strings.TrimSuffix(nearest, "."))
	e.Fault = Unsolvable
	return e
}
