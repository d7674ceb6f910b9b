package worker

import (
	"context"
	"encoding/json"
	"errors"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/shards"
	"toewright/internal/study"
)

// divided are the calls that the page divides among its workers.
var divided = map[string]shards.Start{
	calls.Search:    shards.Search,
	calls.Choose:    shards.Choose,
	calls.Tolerance: shards.Tolerance,
	calls.TradeOff:  shards.TradeOff,
	calls.MapCells:  rows(calls.MapRows),
	calls.MapRoom:   rows(engine.MapRoomRows),
}

// rounds returns in how many rounds a call is divided: what the shards of one do depends on
// what all found in those before.
func rounds(method string) int {
	if method == calls.TradeOff {
		return 2
	}
	return 1
}

// joined are the calls of which the parts need no more than to be put together.
var joined = map[string]func(*study.Document, []json.RawMessage) json.RawMessage{
	calls.MapCells: func(_ *study.Document, parts []json.RawMessage) json.RawMessage { return interleaved(1, parts) },
	calls.MapRoom: func(d *study.Document, parts []json.RawMessage) json.RawMessage {
		if d.Search == nil {
			return nil
		}
		return interleaved(len(d.Search.Limits), parts)
	},
}

// interleaved puts parts, each of which is some rows of so many maps one after the other,
// together to the whole maps.
func interleaved(maps int, parts []json.RawMessage) (all json.RawMessage) {
	for k := range maps {
		for _, p := range parts {
			n := len(p) / maps
			all = append(all, p[k*n:(k+1)*n]...)
		}
	}
	return all
}

// cells is the job of a map's rows. What its shards find are numbers, which follow one
// another and need no answer made of them.
type cells struct {
	shards.Run
	options engine.MapOptions
	of      rowsOf
}

// rowsOf returns the numbers of a shard of a map's rows.
type rowsOf func(context.Context, *study.Document, engine.MapOptions, engine.Shard) ([]float64, error)

func rows(of rowsOf) shards.Start {
	return func(r shards.Run) (shards.Job, error) {
		c := &cells{Run: r, of: of}
		err := json.Unmarshal(r.Options, &c.options)
		c.options.Progress = r.Progress
		return c, err
	}
}

// Do implements [shards.Job].
func (c *cells) Do(ctx context.Context, s engine.Shard) (any, error) {
	return c.of(ctx, c.Study, c.options, s)
}

var errNoAnswer = errors.New("worker: the rows of a map are put one after the other")

// Add implements [shards.Job].
func (*cells) Add(engine.Shard, json.RawMessage) error { return errNoAnswer }

// Answer implements [shards.Job].
func (*cells) Answer(context.Context) (any, error) { return nil, errNoAnswer }
