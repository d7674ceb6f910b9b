package engine

import (
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// targets returns the wanted toe changes of both sides, flat where a study has
// none.
func targets(d *study.Document) [2]optimize.Target {
	var t [2]optimize.Target
	if d.Search == nil {
		return t
	}
	t[solver.Left] = target(d, d.Search.Target)
	t[solver.Right] = t[solver.Left]
	if d.Search.TargetRight != nil {
		t[solver.Right] = target(d, d.Search.TargetRight)
	}
	return t
}

// target returns a curve of the study in mm and radians.
func target(d *study.Document, points [][2]float64) optimize.Target {
	var t optimize.Target
	for _, p := range points {
		t.Travel = append(t.Travel, d.Units.Millimetres(p[0]))
		t.Change = append(t.Change, solver.Deg(p[1]))
	}
	return t
}
