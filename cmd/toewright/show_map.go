package main

import (
	"toewright/internal/engine"
)

// shownCells is the most cells along a side of a map printed for people.
const shownCells = 9

// showMap prints every so many of the map's cells, the largest Y on top.
func showMap(r *report, m *engine.MapResult) {
	r.line("%s of toe change less target of %s, %s, in %s", m.Figure, oneLine(m.Candidate), sides[m.Side], r.ToeMark())
	r.line("%s across, %s upward", m.X.Parameter, m.Y.Parameter)
	switch m.Scenario {
	case "":
	case engine.AllScenarios:
		r.line("in all set-ups that the search must serve, together")
	default:
		r.line("in set-up %s", oneLine(m.Scenario))
	}
	if len(m.Limits) > 0 {
		r.line("! marks a cell that breaks a limit")
	}
	r.line("")
	columns, rows := thinned(len(m.X.Values)), thinned(len(m.Y.Values))
	t := &table{}
	for k := len(rows) - 1; k >= 0; k-- {
		j := rows[k]
		line := []string{axisValue(r, m.Y, j)}
		for _, i := range columns {
			cell := r.toe(float64(m.Cells[j][i]))
			if broken(m, j, i) {
				cell = "! " + cell
			}
			line = append(line, cell)
		}
		t.add(line...)
	}
	foot := []string{""}
	for _, i := range columns {
		foot = append(foot, axisValue(r, m.X, i))
	}
	t.add(foot...)
	r.table(t)
	showMapBest(r, m)
}

// showMapBest says which cell is the best and what the limits are there.
func showMapBest(r *report, m *engine.MapResult) {
	r.line("")
	if !m.Best.Figure.Valid() {
		why := "No cell holds all limits."
		if len(m.Limits) == 0 {
			why = "No cell's car reaches the window."
		}
		r.line(why)
		return
	}
	x, xUnit := r.parameter(m.X.Parameter, float64(m.Best.X))
	y, yUnit := r.parameter(m.Y.Parameter, float64(m.Best.Y))
	which := "Least of all cells"
	if len(m.Limits) > 0 {
		which = "Least of the cells that hold all limits"
	}
	r.line("%s: %s %s at %s %s and %s %s.", which, r.toe(float64(m.Best.Figure)), r.ToeMark(), x, xUnit, y, yUnit)
	for i := range m.Limits {
		l := &m.Limits[i]
		if l.Problem != "" {
			r.line("%s: %s.", l.Name, l.Problem)
			continue
		}
		r.line("%s is %s %s there, allowed %s.", l.Name, r.limit(&l.LimitResult, l.Value), r.limitUnit(&l.LimitResult), bounds(r, &l.LimitResult))
	}
}

// broken reports whether a cell breaks a limit.
func broken(m *engine.MapResult, row, col int) bool {
	for i := range m.Limits {
		if h := m.Limits[i].Held; h != nil && !h[row][col] {
			return true
		}
	}
	return false
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
