package engine

import (
	"context"
	"math"

	"toewright/optimize"
)

// MapLimit is what one of the study's limits measures over a map: of several
// set-ups the value nearest to breaking it.
type MapLimit struct {
	LimitResult
	// Values has a row for each value of Y, as the map's cells; Held says where
	// the limit is. The result beside is that of the best cell.
	Values [][]Number `json:"values"`
	Held   [][]bool   `json:"heldIn"`
}

// mapLimits returns the map's limits; none where the study has none.
func (m *MapRun) mapLimits(ctx context.Context) (out []MapLimit, err error) {
	if m.doc.Search == nil {
		return nil, nil
	}
	rest, n := m.progress.within(m.filled(), 1), float64(len(m.doc.Search.Limits))
	for i := range m.doc.Search.Limits {
		l := &m.doc.Search.Limits[i]
		limit, err := m.limit(i)
		if err != nil {
			out = append(out, MapLimit{LimitResult: m.unmeasured(l, err)})
			continue
		}
		r := MapLimit{LimitResult: m.stating(l)}
		if err := m.measureLimit(ctx, &limit, &r, rest.within(float64(i)/n, float64(i+1)/n)); err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// measureLimit sets what a limit measures over the map.
func (m *MapRun) measureLimit(ctx context.Context, limit *optimize.Limit, r *MapLimit, progress stage) error {
	tightest := make([]LimitResult, m.problem.Rows*m.problem.Columns)
	for i := range m.layers {
		n := float64(len(m.layers))
		part := progress.within(float64(i)/n, float64(i+1)/n)
		values, err := m.layers[i].LimitValues(ctx, optimize.Span{End: m.problem.Rows}, []optimize.Limit{*limit}, optimize.Parallel{Progress: part.items(m.problem.Rows)})
		if err != nil {
			return err
		}
		for k, v := range values[0] {
			here := LimitResult{Value: Number(v), Min: r.Min, Max: r.Max}
			if i == 0 || !(here.Room() >= tightest[k].Room()) {
				tightest[k] = here
			}
		}
	}
	for j := range m.problem.Rows {
		row, held := make([]Number, m.problem.Columns), make([]bool, m.problem.Columns)
		for i := range row {
			v := tightest[j*m.problem.Columns+i].Value
			row[i], held[i] = v, v.Valid() && limit.Holds(float64(v))
		}
		r.Values, r.Held = append(r.Values, row), append(r.Held, held)
	}
	return nil
}

// heldAt reports whether all limits that can be measured hold in a cell.
func heldAt(limits []MapLimit, row, col int) bool {
	for i := range limits {
		if limits[i].Held != nil && !limits[i].Held[row][col] {
			return false
		}
	}
	return true
}

// atBest sets each limit's own result to that of the map's best cell; where there
// is none its value stays none.
func atBest(limits []MapLimit, row, col int) {
	for i := range limits {
		if l := &limits[i]; l.Values != nil && row >= 0 {
			l.Value, l.LimitResult.Held = l.Values[row][col], l.Held[row][col]
		}
	}
}

// leastCell returns the place of the least figure among cells that hold all limits,
// -1 where there is none.
func leastCell(cells [][]Number, limits []MapLimit) (row, col int) {
	row, col = -1, -1
	least := math.Inf(1)
	for j := range cells {
		for i, v := range cells[j] {
			if v.Valid() && float64(v) < least && heldAt(limits, j, i) {
				row, col, least = j, i, float64(v)
			}
		}
	}
	return row, col
}
