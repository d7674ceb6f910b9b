package engine

import (
	"context"
	"math"

	"toewright/internal/study"
	"toewright/optimize"
)

// MapRoom returns the room that the cars of a map have to each limit of the study's
// search: one map after the other in the order of the limits, row after row, in the
// limit's unit. Room below 0 is that by which a limit is broken, where the car has no
// value the difference that matters; NaN where the car cannot be
// built. Of several set-ups of the search it is the least room of all. A call that is
// cancelled is an error.
func MapRoom(ctx context.Context, d *study.Document, o MapOptions) ([]float64, error) {
	return MapRoomRows(ctx, d, o, Whole)
}

// MapRoomRows is [MapRoom] of a shard of the map's rows.
func MapRoomRows(ctx context.Context, d *study.Document, o MapOptions, s Shard) ([]float64, error) {
	m, err := newMapper(d, &o)
	if err != nil {
		return nil, err
	}
	if err := m.problem.Check(); err != nil {
		return nil, explain(err, "")
	}
	limits, err := m.limits()
	if err != nil {
		return nil, err
	}
	if d.Search != nil && len(d.Search.Scenarios) > 0 {
		if err := m.setScenario(AllScenarios); err != nil {
			return nil, err
		}
	}
	var out []float64
	n, rows := float64(len(m.layers)), s.Span(m.problem.Rows)
	for i := range m.layers {
		rooms, err := m.rooms(ctx, &m.layers[i], rows, limits, stages(o.Progress).within(float64(i)/n, float64(i+1)/n))
		if err != nil {
			return nil, err
		}
		if out == nil {
			out = rooms
		}
		for k, room := range rooms {
			out[k] = math.Min(out[k], room) // NaN where either is
		}
	}
	return out, nil
}

// rooms returns the room to each limit in some rows of one set-up.
func (m *mapper) rooms(ctx context.Context, layer *mapLayer, rows optimize.Span, limits []optimize.Limit, progress stage) (out []float64, err error) {
	values, err := layer.LimitValues(ctx, rows, limits, optimize.Parallel{Progress: progress.items(rows.Len())})
	if err != nil {
		return nil, err
	}
	for k := range limits {
		for cell, v := range values[k] {
			room := limits[k].Room(v)
			if math.IsNaN(v) && layer.builds(rows.First*m.problem.Columns+cell) {
				room = -limits[k].Scale
			}
			out = append(out, room)
		}
	}
	return out, nil
}

// builds reports whether the car of a cell, counted row after row, can be built.
func (p *mapLayer) builds(cell int) bool {
	_, err := p.Base.Assemble(p.ChangesAt(cell%p.Columns, cell/p.Columns), p.Hold)
	return err == nil
}

// limits returns those of the study's search, none where it states none.
func (s *sweeper) limits() ([]optimize.Limit, error) {
	var list []optimize.Limit
	if s.doc.Search == nil {
		return nil, nil
	}
	for i := range s.doc.Search.Limits {
		l, err := s.limit(i)
		if err != nil {
			return nil, err
		}
		list = append(list, l)
	}
	return list, nil
}
