package main

import (
	"toewright/internal/engine"
)

// shownCells is the most cells along a side of a map printed for people.
const shownCells = 9

// showMap prints every so many of the map's cells, the largest Y on top.
func showMap(r *report, m *engine.MapResult) {
	r.line("%s of toe change less target of %s, %s, in %s", m.Figure, oneLine(m.Candidate), sides[m.Side], r.toeUnit())
	r.line("%s across, %s upward", m.X.Parameter, m.Y.Parameter)
	r.line("")
	columns, rows := thinned(len(m.X.Values)), thinned(len(m.Y.Values))
	t := &table{}
	for k := len(rows) - 1; k >= 0; k-- {
		j := rows[k]
		line := []string{axisValue(r, m.Y, j)}
		for _, i := range columns {
			line = append(line, r.toe(float64(m.Cells[j][i])))
		}
		t.add(line...)
	}
	foot := []string{""}
	for _, i := range columns {
		foot = append(foot, axisValue(r, m.X, i))
	}
	t.add(foot...)
	r.table(t)
	if m.Best.Figure.Valid() {
		x, xUnit := r.parameter(m.X.Parameter, m.Best.X)
		y, yUnit := r.parameter(m.Y.Parameter, m.Best.Y)
		r.line("")
		r.line("Least of all cells: %s %s at %s %s and %s %s.", r.toe(float64(m.Best.Figure)), r.toeUnit(), x, xUnit, y, yUnit)
	}
}

func axisValue(r *report, a engine.MapAxis, i int) string {
	text, _ := r.parameter(a.Parameter, a.Values[i])
	return text
}

// thinned returns at most shownCells of the indices 0 to n-1, evenly, both ends
// among them.
func thinned(n int) []int {
	k := min(n, shownCells)
	out := make([]int, k)
	for i := range out {
		out[i] = i * (n - 1) / max(k-1, 1)
	}
	return out
}
