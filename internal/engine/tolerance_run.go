package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/optimize"
)

// ToleranceRun is a series of cars that can be built in shards.
type ToleranceRun struct {
	*tolerancer
	spread   *optimize.Spread
	setUps   []setUp
	progress stage
}

// NewToleranceRun checks a study's tolerances and propagates them.
func NewToleranceRun(d *study.Document, o ToleranceOptions) (*ToleranceRun, error) {
	if err := d.ReadyForTolerance(); err != nil {
		return nil, explain(err, "")
	}
	t, err := newTolerancer(d, o)
	if err != nil {
		return nil, err
	}
	spread, err := t.series.Propagate()
	if err != nil {
		return nil, explain(err, label(t.car.name))
	}
	ups, err := t.scenarios()
	if err != nil {
		return nil, explain(err, "")
	}
	return &ToleranceRun{t, spread, ups, stages(o.Progress)}, nil
}

// Span returns the numbers of a shard's cars.
func (r *ToleranceRun) Span(s Shard) optimize.Span { return s.Span(r.count) }

// Empty returns the census of no cars, to which those of shards can be joined.
func (r *ToleranceRun) Empty() *optimize.Census { return r.series.NewCensus(r.spread) }

// first returns the part that the series itself has in the progress of a run: its cars
// among all that are built.
func (r *ToleranceRun) first() float64 {
	return float64(r.count) / float64(r.count+len(r.setUps)*r.inEach())
}

// inEach returns how many cars are built in each set-up.
func (r *ToleranceRun) inEach() int { return min(r.count, setUpCars) }

// Build builds the cars of a shard, fewer where the context ends.
func (r *ToleranceRun) Build(ctx context.Context, s Shard) (*optimize.Census, error) {
	cars := r.Span(s)
	census, err := r.series.Count(ctx, r.spread, cars, optimize.Parallel{Progress: r.progress.within(0, r.first()).items(cars.Len())})
	if err != nil {
		return nil, explain(err, label(r.car.name))
	}
	return census, nil
}
