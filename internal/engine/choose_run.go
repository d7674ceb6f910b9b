package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/optimize"
)

// ChooseRun is a catalogue whose combinations can be tried in shards.
type ChooseRun struct {
	*chooser
	options      ChooseOptions
	combinations int
}

// NewChooseRun checks a study's catalogue.
func NewChooseRun(d *study.Document, o ChooseOptions) (*ChooseRun, error) {
	c, err := newChooser(d, &o)
	if err != nil {
		return nil, err
	}
	n, err := c.shelf.Combinations()
	if err != nil {
		return nil, explain(err, "")
	}
	return &ChooseRun{c, o, n}, nil
}

// Span returns the numbers of a shard's combinations.
func (r *ChooseRun) Span(s Shard) optimize.Span { return s.Span(r.combinations) }

// Effects returns how many side effects are counted beside toe change and price.
func (r *ChooseRun) Effects() int { return len(r.shelf.Effects) }

// Listed reports whether so many of the best of so many combinations may be kept: with
// limits any number up to all that have room, those that break one left out.
func (r *ChooseRun) Listed(best, built int) bool {
	most := min(built, r.shelf.Most)
	return best == most || len(r.shelf.Limits) > 0 && best < most
}

// Try tries the combinations of a shard, fewer where the context ends.
func (r *ChooseRun) Try(ctx context.Context, s Shard) (*optimize.Choices, error) {
	span := r.Span(s)
	found, err := r.shelf.Try(ctx, span, optimize.Parallel{Progress: stages(r.options.Progress).items(span.Len())})
	return found, explain(err, "")
}

// Join adds what was found in one shard to that of others.
func (r *ChooseRun) Join(sum, more *optimize.Choices) { sum.Join(&r.shelf, more) }
