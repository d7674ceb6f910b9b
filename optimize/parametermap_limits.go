package optimize

import (
	"context"
	"math"
)

// LimitValues returns what each limit measures in each cell of a span of rows, nearest to
// breaking it, row after row, one list for each limit; NaN where the car cannot be built. A cancelled
// context is an error.
func (p *ParameterMap) LimitValues(ctx context.Context, rows Span, limits []Limit, parallel Parallel) ([][]float64, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	out := make([][]float64, len(limits))
	for i := range out {
		out[i] = make([]float64, rows.Len()*p.Columns)
	}
	divide(ctx, &parallel, rows, mapChunk, p.worker, func(w *mapWorker, ctx context.Context, some Span) {
		for row := some.First; row < some.End; row++ {
			w.measure(ctx, row, (row-rows.First)*p.Columns, limits, out)
		}
	})
	return out, ctx.Err()
}

// measure sets what each limit measures along a row, from a place of out on, of fewer cells
// where the context ends.
func (w *mapWorker) measure(ctx context.Context, row, at int, limits []Limit, out [][]float64) {
	for col := range w.p.Columns {
		if ctx.Err() != nil {
			return
		}
		car, err := w.Base.Assemble(w.p.ChangesAt(col, row), w.Hold)
		for i := range limits {
			out[i][at+col] = math.NaN()
			if err == nil {
				out[i][at+col] = limits[i].value(car, w.From, w.ws)
			}
		}
	}
}
