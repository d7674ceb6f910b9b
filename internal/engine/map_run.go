package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/optimize"
)

// MapRun is a map whose rows can be filled in shards.
type MapRun struct {
	*mapper
	progress stage
}

// NewMapRun checks what a map is to be drawn over.
func NewMapRun(d *study.Document, o MapOptions) (*MapRun, error) {
	m, err := newMapper(d, &o)
	if err != nil {
		return nil, err
	}
	return &MapRun{m, stages(o.Progress)}, explain(m.problem.Check(), "")
}

// Cells returns how many cells the map has, and which of them are a shard's.
func (r *MapRun) Cells(s Shard) (all int, own optimize.Span) {
	columns, rows := r.problem.Columns, s.Span(r.problem.Rows)
	return columns * r.problem.Rows, optimize.Span{First: rows.First * columns, End: rows.End * columns}
}

// filled is the part that the figures have in the progress, those of each limit taken to
// be as much work.
func (r *MapRun) filled() float64 {
	if r.doc.Search == nil {
		return 1
	}
	return 1 / float64(1+len(r.doc.Search.Limits))
}

// Fill returns the figure of each cell of a shard's rows, radians, row after row;
// none where the car cannot be built or does not reach the window.
func (r *MapRun) Fill(ctx context.Context, s Shard) ([]Number, error) {
	rows := s.Span(r.problem.Rows)
	return r.fill(ctx, rows, r.progress.within(0, r.filled()))
}
