package shards

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Run is one call on one study that is to be done in shards.
type Run struct {
	Study   *study.Document
	Options json.RawMessage // of the engine's type for the call
	// Stopped says that the shards were stopped on the way: what they have done by then is
	// taken for what it is.
	Stopped bool
	// Progress, if not nil, hears of a shard's work, and of the answer's, as of the whole
	// call's.
	Progress func(engine.Progress)
}

// Job does the work of one run and gathers what comes of it.
type Job interface {
	// Do does a shard's work and returns its result, for JSON: less of it where the context
	// ends. A job of several rounds does the round after those of which parts were added.
	Do(context.Context, engine.Shard) (any, error)
	// Add adds the result of a shard that was not added before.
	Add(engine.Shard, json.RawMessage) error
	// Answer returns what the call answers, once all shards were added. Where the context has
	// ended that is the best so far, which says that it is.
	Answer(context.Context) (any, error)
}

// Start makes the job of a call: it checks the study and the options.
type Start func(Run) (Job, error)

// ErrCut is that a JSON value does not fill its text.
var ErrCut = errors.New("is not a part of a run, or was cut short; run its shard again")

// Strict reads one JSON value that fills data and has no keys but v's.
func Strict(data []byte, v any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		return fmt.Errorf("cannot be read: %w", err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return ErrCut
	}
	return nil
}

// wrongCount reports whether a result is not of as many items as its shard has: of a run
// that was stopped there may be fewer.
func (r *Run) wrongCount(n, want int) bool {
	return n != want && !(r.Stopped && n >= 0 && n < want)
}
