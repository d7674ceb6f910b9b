package calls

import (
	"context"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// mapCells answers with the figures of all rows.
func mapCells(ctx context.Context, d *study.Document, o engine.MapOptions) ([]float64, error) {
	return MapRows(ctx, d, o, engine.Whole)
}

// MapRows returns the figures of a shard of a map's rows in radians, row after row.
func MapRows(ctx context.Context, d *study.Document, o engine.MapOptions, s engine.Shard) ([]float64, error) {
	run, err := engine.NewMapRun(d, o)
	if err != nil {
		return nil, err
	}
	cells, err := run.Fill(ctx, s)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(cells))
	for i, c := range cells {
		out[i] = float64(c)
	}
	return out, nil
}
