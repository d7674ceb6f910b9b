package report

import (
	"toewright/internal/study"
	"toewright/solver"
)

// usualRow and usualRowInch are the steps of the table's travel, mm and in, where
// the window suits them.
const (
	usualRow     = 10.0
	usualRowInch = 0.5
)

// A table has between fewestRows and mostRows rows, or the step is halved or
// doubled.
const (
	fewestRows = 5
	mostRows   = 21
)

// tableStudy returns the study with the travel of the sheet's table: the study's
// window by a step that is round in the units shown. It shares all else with d.
func tableStudy(d *study.Document) *study.Document {
	shown := d.Style().Units
	w := d.Window()
	step := usualRow
	if shown == study.Inch {
		step = usualRowInch
	}
	whole := d.Units.Convert(w.Bump+w.Droop, shown)
	for whole/step+1 > mostRows {
		step *= 2
	}
	for whole > 0 && whole/step+1 < fewestRows {
		step /= 2
	}
	w.Step = shown.Convert(step, d.Units)
	out := *d
	out.Travel = &w
	if d.Search != nil && d.Search.Window != nil {
		search, window := *d.Search, *d.Search.Window
		window.Step = 0 // that of the travel
		search.Window, out.Search = &window, &search
	}
	return &out
}

// travelsOf returns the travels of a study's window. Those that are none are found
// out by whoever moves the cars.
func travelsOf(d *study.Document) []float64 {
	w := d.Window()
	list, _ := solver.Grid(w.Bump, w.Droop, w.Step)
	return list
}
