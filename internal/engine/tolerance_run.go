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
	setUps   []setUpSeries
	progress stage
}

// Built is what is counted of the cars of a series, and of the first of them in each of its
// set-ups, nil where no car can be built.
type Built struct {
	*optimize.Census
	InSetUps []*optimize.Census
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
	r := &ToleranceRun{t, spread, nil, stages(o.Progress)}
	for i := range ups {
		r.setUps = append(r.setUps, t.seriesIn(&ups[i]))
	}
	return r, nil
}

// Span returns the numbers of a shard's cars.
func (r *ToleranceRun) Span(s Shard) optimize.Span { return s.Span(r.count) }

// InSetUp returns which of the first cars a shard builds in each set-up.
func (r *ToleranceRun) InSetUp(s Shard) optimize.Span { return s.Span(r.inEach()) }

// inEach returns how many cars are built in each set-up.
func (r *ToleranceRun) inEach() int { return min(r.count, setUpCars) }

// Empty returns the counts of no cars, to which those of shards can be joined.
func (r *ToleranceRun) Empty() *Built {
	b := &Built{r.series.NewCensus(r.spread), make([]*optimize.Census, len(r.setUps))}
	for i := range r.setUps {
		if up := &r.setUps[i]; up.problem == nil {
			b.InSetUps[i] = up.series.NewCensus(up.spread)
		}
	}
	return b
}

// Join adds the cars of another shard.
func (b *Built) Join(o *Built) {
	b.Census.Join(o.Census)
	for i, c := range o.InSetUps {
		if c != nil {
			b.InSetUps[i].Join(c)
		}
	}
}

// Build builds the cars of a shard, fewer where the context ends.
func (r *ToleranceRun) Build(ctx context.Context, s Shard) (*Built, error) {
	cars, each := r.Span(s), r.InSetUp(s)
	first := float64(cars.Len()) / float64(max(cars.Len()+len(r.setUps)*each.Len(), 1)) // of the work, the series itself
	census, err := r.series.Count(ctx, r.spread, cars, optimize.Parallel{Progress: r.progress.within(0, first).items(cars.Len())})
	if err != nil {
		return nil, explain(err, label(r.car.name))
	}
	out, rest := &Built{census, make([]*optimize.Census, len(r.setUps))}, r.progress.within(first, 1)
	for i := range r.setUps {
		n := float64(len(r.setUps))
		out.InSetUps[i] = r.setUps[i].count(ctx, each, rest.within(float64(i)/n, float64(i+1)/n))
	}
	return out, nil
}
