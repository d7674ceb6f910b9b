package worker

import (
	"context"
	"encoding/json"
	"errors"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/shards"
)

// divided are the calls that the page divides among its workers.
var divided = map[string]shards.Start{
	calls.Search:    shards.Search,
	calls.Choose:    shards.Choose,
	calls.Tolerance: shards.Tolerance,
	calls.MapCells:  mapCells,
}

// cells is the job of a map's rows. What its shards find are numbers, which follow one
// another and need no answer made of them.
type cells struct {
	shards.Run
	options engine.MapOptions
}

func mapCells(r shards.Run) (shards.Job, error) {
	c := &cells{Run: r}
	return c, json.Unmarshal(r.Options, &c.options)
}

// Do implements [shards.Job].
func (c *cells) Do(ctx context.Context, s engine.Shard) (any, error) {
	return calls.MapRows(ctx, c.Study, c.options, s)
}

var errNoAnswer = errors.New("worker: the rows of a map are put one after the other")

// Add implements [shards.Job].
func (*cells) Add(engine.Shard, json.RawMessage) error { return errNoAnswer }

// Answer implements [shards.Job].
func (*cells) Answer(context.Context) (any, error) { return nil, errNoAnswer }
