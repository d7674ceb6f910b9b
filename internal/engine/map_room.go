package engine

import (
	"context"
	"math"

	"toewright/internal/study"
	"toewright/optimize"
)

// MapRoom returns the room that the cars of a map have to each limit of the study's
// search: one map after the other in the order of the limits, row after row, in the
// limit's unit. Room below 0 is that by which a limit is broken; NaN where the car
// cannot be built. The limits are taken on the car as it stands, in no scenario. A call
// that is cancelled is an error.
func MapRoom(ctx context.Context, d *study.Document, o MapOptions) ([]float64, error) {
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
	out := make([]float64, len(limits)*m.problem.Columns*m.problem.Rows)
	for row := range m.problem.Rows {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		m.fillRoom(out, limits, row)
	}
	return out, nil
}

// limits returns those of the study's search, none where it states none.
func (s *sweeper) limits() ([]optimize.Limit, error) {
	var list []optimize.Limit
	if s.doc.Search == nil {
		return nil, nil
	}
	for i := range s.doc.Search.Limits {
		l, err := s.limit(&s.doc.Search.Limits[i])
		if err != nil {
			return nil, err
		}
		list = append(list, l)
	}
	return list, nil
}

// fillRoom sets one row of the maps of all limits.
func (m *mapper) fillRoom(out []float64, limits []optimize.Limit, row int) {
	p := &m.problem
	size := p.Columns * p.Rows
	for col := range p.Columns {
		car, err := m.base.Assemble(p.ChangesAt(col, row), p.Hold)
		for k := range limits {
			room := math.NaN()
			if err == nil {
				room = limits[k].Room(limits[k].Of(car, m.ws))
			}
			out[k*size+row*p.Columns+col] = room
		}
	}
}
