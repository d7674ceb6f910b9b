package model

import (
	"strings"

	"toewright/internal/study"
)

// Doubt is a finding of [study.Check] with the place of the page where it is settled.
type Doubt struct {
	study.Finding
	Step string     // Step opens the step or the way of the place.
	ID   string     // ID is that of the cell or field, "" where the step has to do.
	Side study.Side // Side is that whose points the cell stands among, "" for any.
}

// doubtSteps are the steps of what is no part of the car, by the first key of its path.
var doubtSteps = map[string]string{
	"readings": "readings", "series": "series", "advise": "readings", "priors": "readings", "candidates": "compare", "display": "compare",
	"search": "search", "tolerances": "series", "yield": "series", "catalogue": "parts", "loads": "sheet", "arm": "sheet",
}

// Doubts lists what looks like a slip in a study.
func Doubts(d *study.Document) (list []Doubt) {
	for _, f := range study.Check(d) {
		doubt := Doubt{Finding: f, Step: "car"}
		path := strings.TrimPrefix(f.Path, "suspension.")
		key, rest, _ := strings.Cut(path, ".")
		if step, ok := doubtSteps[key]; ok {
			doubt.Step = step
		} else if id := fieldOf(d, path); id != "" {
			doubt.ID = id
		} else if key == "tieRod" {
			part, _, _ := strings.Cut(rest, ".")
			doubt.ID = "tie-rod-" + part
		} else {
			doubt.findCell(d, path)
		}
		list = append(list, doubt)
	}
	return list
}

// fieldOf returns the field of a value of the car, "" where it has none of its own.
func fieldOf(d *study.Document, path string) string {
	ids := map[string]string{"vehicle.wheelbase": "wheelbase", "vehicle.tyreRadius": "tyre-radius", "travel": "travel-bump"}
	for _, side := range []study.Side{study.Left, study.Right} {
		for _, key := range []string{"toe", "camber"} {
			ids[d.AnglePath(side, key)] = "static-" + key + "-" + string(side)
		}
	}
	for _, v := range CarValues(d) {
		ids[v.Path] = v.ID
	}
	return ids[path]
}

// findCell finds the cell of a place, and of what is about no place in particular the first
// of its side.
func (doubt *Doubt) findCell(d *study.Document, path string) {
	doubt.Side = study.Left
	if d.Suspension.Right != nil && study.Within(path, string(study.Right)) {
		doubt.Side = study.Right
	}
	doubt.ID = PointRows(d, doubt.Side)[0].CellID(0)
	for _, side := range []study.Side{study.Left, study.Right} {
		for _, p := range PointRows(d, side) {
			if study.Within(path, p.Path) {
				doubt.ID, doubt.Side = p.CellID(axisIn(doubt.Message)), side
				return
			}
		}
	}
}

// axisIn returns the coordinate that a finding begins with, "z is -430", else the first.
func axisIn(message string) int {
	axis, _, _ := strings.Cut(message, " ")
	if len(axis) != 1 {
		return 0
	}
	return max(0, strings.Index("xyz", axis))
}
