package engine

import (
	"context"

	"toewright/internal/study"
)

// SetUpsOptions say whose service of the set-ups is asked for.
type SetUpsOptions struct {
	Candidate string `json:"candidate,omitzero"` // "base", where empty, is the base car
}

// SetUpsResult is what [SetUps] returns.
type SetUpsResult struct {
	Candidate string `json:"candidate"`
	// Score is the figure that the search minimises, over all set-ups; none where the
	// car cannot serve one.
	Score     Number           `json:"score"`
	Scenarios []ScenarioResult `json:"scenarios"` // in the order of the study
}

// SetUps returns how one car serves each set-up of the study's search, which it need
// not have come from.
func SetUps(ctx context.Context, d *study.Document, o SetUpsOptions) (*SetUpsResult, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s, car, err := newJudged(d, o.Candidate)
	if err != nil {
		return nil, err
	}
	out := &SetUpsResult{Candidate: car.name, Score: none, Scenarios: []ScenarioResult{}}
	if d.Search == nil || len(d.Search.Scenarios) == 0 {
		return out, nil
	}
	ups, err := s.studySetUps()
	if err != nil {
		return nil, err
	}
	out.Score, out.Scenarios = ups.serve(car.axle.Changes(), car.axle.Hold())
	return out, nil
}
