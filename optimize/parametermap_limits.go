package optimize

import (
	"context"
	"math"
)

// LimitValues returns what each limit measures in each cell of the map, nearest to
// breaking it, row after row, one list for each limit; NaN where the car cannot be built. A cancelled
// context is an error.
func (p *ParameterMap) LimitValues(ctx context.Context, limits []Limit, parallel Parallel) ([][]float64, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	out := make([][]float64, len(limits))
	for i := range out {
		out[i] = make([]float64, p.Rows*p.Columns)
	}
	divide(ctx, &parallel, Span{End: p.Rows}, mapChunk, p.worker, func(w *mapWorker, ctx context.Context, rows Span) {
		for row := rows.First; row < rows.End; row++ {
			w.measure(ctx, row, limits, out)
		}
	})
	return out, ctx.Err()
}

// measure sets what each limit measures along a row, of fewer cells where the context
// ends.
func (w *mapWorker) measure(ctx context.Context, row int, limits []Limit, out [][]float64) {
	for col := range w.p.Columns {
		if ctx.Err() != nil {
			return
		}
		at := row*w.p.Columns + col
		car, err := w.Base.Assemble(w.p.ChangesAt(col, row), w.Hold)
		for i := range limits {
			out[i][at] = math.NaN()
			if err == nil {
				out[i][at] = limits[i].value(car, w.From, w.ws)
			}
		}
	}
}
