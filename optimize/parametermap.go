package optimize

import (
	"context"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// ParameterMap asks for the figures of a car over two of its parameters: it shows
// the valley along which they make up for each other.
type ParameterMap struct {
	Judge
	Changes []solver.Change // of the candidate on which the map lies
	X, Y    Free            // bounds are the map's edges
	Columns int             // at least 2; the first column is X.Min, the last X.Max
	Rows    int             // likewise of Y
}

// Check returns an error that says what the map lacks.
func (p *ParameterMap) Check() error {
	if min(p.Columns, p.Rows) < MinMap || max(p.Columns, p.Rows) > MaxMap {
		return nlp.ProblemErrorf("a map of %d by %d cells; each side must have %d to %d", p.Columns, p.Rows, MinMap, MaxMap)
	}
	axes := [2]*Free{&p.X, &p.Y}
	for _, f := range axes {
		if !(f.Max > f.Min) {
			return nlp.ProblemErrorf("the map's bounds of %s, %.6g to %.6g, must ascend", f.Key(), f.Min, f.Max)
		}
	}
	if err := solver.CheckOnce(len(axes), func(i int) (*solver.Parameter, solver.Selection) {
		return &axes[i].Parameter, axes[i].Sides
	}); err != nil {
		return err
	}
	return p.Judge.Check()
}

// MinMap and MaxMap bound the cells along a side of a map.
const (
	MinMap = 2
	MaxMap = 512
)

// At returns the value of a free parameter at cell i of n along its axis.
func (f *Free) At(i, n int) float64 {
	return f.Min + (f.Max-f.Min)*float64(i)/float64(n-1)
}

// Fill returns the figures of a span of rows, row after row; NaN where a car
// cannot be built or does not reach the window. A cancelled context is an error.
func (p *ParameterMap) Fill(ctx context.Context, rows Span, parallel Parallel) ([]Figures, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	out := make([]Figures, rows.Len()*p.Columns)
	divide(ctx, &parallel, rows, mapChunk, p.worker, func(w *mapWorker, ctx context.Context, s Span) {
		w.fill(ctx, s, out[(s.First-rows.First)*p.Columns:])
	})
	return out, ctx.Err()
}

// mapWorker builds the cars of a map in memory of its own.
type mapWorker struct {
	*bench
	p       *ParameterMap
	changes []solver.Change // those of X and Y last
}

func (p *ParameterMap) worker() *mapWorker {
	changes := p.without()
	same := changedAlike(changes) && p.X.Sides == solver.BothSides && p.Y.Sides == solver.BothSides
	return &mapWorker{p.benchFor(same), p, append(changes, p.X.change(0), p.Y.change(0))}
}

// fill sets the figures of a span of rows, of fewer where the context ends.
func (w *mapWorker) fill(ctx context.Context, rows Span, out []Figures) {
	x, y := &w.changes[len(w.changes)-2], &w.changes[len(w.changes)-1]
	for j := range rows.Len() {
		if ctx.Err() != nil {
			return
		}
		y.Value = w.p.Y.At(rows.First+j, w.p.Rows)
		for i := range w.p.Columns {
			x.Value = w.p.X.At(i, w.p.Columns)
			out[j*w.p.Columns+i] = w.figures(w.changes)
		}
	}
}

// ChangesAt returns the changes of the car of a cell.
func (p *ParameterMap) ChangesAt(col, row int) []solver.Change {
	return append(p.without(), p.X.change(p.X.At(col, p.Columns)), p.Y.change(p.Y.At(row, p.Rows)))
}

// without returns the candidate's changes but those of the map's own parameters, whose
// values are the map's: of a change of both wheels what the map leaves to one of them.
func (p *ParameterMap) without() []solver.Change {
	return p.Y.without(p.X.without(p.Changes))
}
