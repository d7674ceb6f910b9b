package calls

import (
	"context"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Band says which share of a map's rows is asked for.
type Band struct {
	engine.MapOptions
	Shard engine.Shard `json:"shard"`
}

// mapBand answers with the figures in radians, row after row.
func mapBand(ctx context.Context, d *study.Document, o Band) ([]float64, error) {
	run, err := engine.NewMapRun(d, o.MapOptions)
	if err != nil {
		return nil, err
	}
	cells, err := run.Fill(ctx, o.Shard)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(cells))
	for i, c := range cells {
		out[i] = float64(c)
	}
	return out, nil
}
