package engine

import (
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// Window is the travel that a result covers, in the file's units.
type Window struct {
	Bump  float64 `json:"bump"`
	Droop float64 `json:"droop"`
	Step  float64 `json:"step"`
}

// grid are the travels of a window, ascending, in the file's units and in mm. The
// former are kept so that a travel of 0.75 in comes back as 0.75.
type grid struct {
	file, mm []float64
}

func newGrid(w study.Travel, u study.Units) (grid, error) {
	file, err := solver.Grid(w.Bump, w.Droop, w.Step)
	if err != nil {
		return grid{}, explain(err, "")
	}
	g := grid{file: file, mm: make([]float64, len(file))}
	for i, x := range file {
		g.mm[i] = u.Millimetres(x)
	}
	return g, nil
}

// below returns the travels below 0.
func (g grid) below() []float64 {
	zero, _ := slices.BinarySearch(g.mm, 0)
	return g.mm[:zero]
}

// from returns the file's travels from that of the first position on.
func (g grid) from(positions []solver.Position) []float64 {
	if len(positions) == 0 {
		return nil
	}
	first, _ := slices.BinarySearch(g.mm, positions[0].Travel)
	return g.file[first:]
}
