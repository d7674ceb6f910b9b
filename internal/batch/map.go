package batch

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// mapJob fills a map.
type mapJob struct {
	run   *engine.MapRun
	cells []engine.Number // radians, of the shards added
}

func newMap(d *study.Document, options json.RawMessage) (job, error) {
	var o engine.MapOptions
	if err := strict(options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewMapRun(d, o)
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

func (j *mapJob) do(ctx context.Context, s engine.Shard) (any, error) {
	found, err := j.run.Fill(ctx, s)
	return cells{found}, err
}

func (j *mapJob) add(s engine.Shard, raw json.RawMessage) error {
	var c cells
	if err := strict(raw, &c); err != nil {
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

func (j *mapJob) answer(ctx context.Context) (any, error) { return j.run.Result(ctx, j.cells) }
