package shards

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
)

// mapJob fills a map.
type mapJob struct {
	run   *engine.MapRun
	cells []engine.Number // radians, of the shards added
}

// Map is the [Start] of that call.
func Map(r Run) (Job, error) {
	o := engine.MapOptions{Progress: r.Progress}
	if err := Strict(r.Options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewMapRun(r.Study, o)
	if err != nil {
		return nil, err
	}
	all, _ := run.Cells(engine.Whole)
	return &mapJob{run, make([]engine.Number, all)}, nil
}

// cells is the result of a shard.
type cells struct {
	Cells []engine.Number `json:"cells"`
}

// Do implements [Job].
func (j *mapJob) Do(ctx context.Context, s engine.Shard) (any, error) {
	found, err := j.run.Fill(ctx, s)
	return cells{found}, err
}

// Add implements [Job].
func (j *mapJob) Add(s engine.Shard, raw json.RawMessage) error {
	var c cells
	if err := Strict(raw, &c); err != nil {
		return err
	}
	_, own := j.run.Cells(s)
	if len(c.Cells) != own.Len() {
		return fmt.Errorf("result.cells: %d of them, want the %d of its shard", len(c.Cells), own.Len())
	}
	for i, x := range c.Cells {
		if x < 0 {
			return fmt.Errorf("result.cells.%d: %g, want 0 or more", i, float64(x))
		}
	}
	copy(j.cells[own.First:], c.Cells)
	return nil
}

// Answer implements [Job].
func (j *mapJob) Answer(ctx context.Context) (any, error) { return j.run.Result(ctx, j.cells) }
