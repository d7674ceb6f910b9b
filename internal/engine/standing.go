package engine

import (
	"context"

	"toewright/internal/study"
)

// StandingOptions say whose standing is asked for.
type StandingOptions struct {
	Candidate string `json:"candidate,omitzero"` // "base", where empty, is the base car
}

// StandingResult is what [Standing] returns.
type StandingResult struct {
	Candidate string        `json:"candidate"`
	Limits    []LimitResult `json:"limits"` // in the order of the study
}

// Standing returns how one car stands to the limits of the study's search, which
// it need not have come from, each by itself and in that of the search's set-ups in which
// it has least room. One that cannot be measured says why in its Problem and leaves the
// others alone.
func Standing(ctx context.Context, d *study.Document, o StandingOptions) (*StandingResult, error) {
	s, car, err := newJudged(d, o.Candidate)
	if err != nil {
		return nil, err
	}
	out := &StandingResult{Candidate: car.name, Limits: []LimitResult{}}
	if d.Search == nil {
		return out, nil
	}
	ups, err := s.scenarios()
	if err != nil {
		return nil, err
	}
	var cars []limitCar
	for i := range d.Search.Limits {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		l := &d.Search.Limits[i]
		limit, err := s.limit(i)
		if err != nil {
			out.Limits = append(out.Limits, s.unmeasured(l, err))
			continue
		}
		if cars == nil {
			cars = s.limitCars(ups, car.axle.Changes(), car.axle.Hold())
		}
		out.Limits = append(out.Limits, s.standsIn(l, &limit, cars))
	}
	return out, nil
}
