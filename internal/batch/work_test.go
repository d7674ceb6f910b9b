package batch

import (
	"context"
	"math"
	"sync/atomic"
	"testing"

	"toewright/internal/engine"
)

// lateCancel is a context that ends after so many looks at it.
type lateCancel struct {
	context.Context
	looks atomic.Int64 // by several goroutines
}

func (c *lateCancel) Err() error {
	if c.looks.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// TestWorkStopped: a shard that did not come to its end has no part.
func TestWorkStopped(t *testing.T) {
	for command := range small {
		for looks := range int64(3) {
			ctx := &lateCancel{Context: context.Background()}
			ctx.looks.Store(looks)
			part, err := newWork(t, command).Run(ctx, engine.Whole)
			if part != nil {
				t.Errorf("%s stopped after %d looks: a part of %d bytes", command, looks, len(part))
			}
			wantError(t, command, err, "shard 0/1 was stopped before it was done, and wrote no part; run it again")
		}
	}
}

func TestNewRefuses(t *testing.T) {
	d := document(t)
	d.Tolerances, d.Catalogue = nil, nil
	low := math.Inf(-1)
	for _, tt := range []struct {
		name, command string
		options       any
		part          string // of the error
	}{
		{"no tolerances", "tolerance", engine.ToleranceOptions{}, "tolerances"},
		{"no catalogue", "choose", engine.ChooseOptions{}, "catalogue: is empty"},
		{"a map of one cell", "map", engine.MapOptions{Columns: new(1), Rows: new(1)}, "columns: want 2 to 512, got 1"},
		{"an infinite bound", "map", engine.MapOptions{XMin: &low}, "an option is not a number"},
	} {
		_, err := New(tt.command, d, tt.options)
		wantError(t, tt.name, err, tt.part)
	}
}
