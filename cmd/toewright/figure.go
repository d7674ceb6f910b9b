package main

import (
	"toewright/internal/engine"
	"toewright/internal/number"
)

// compareRow is a figure as it is printed.
type compareRow struct{ *engine.CompareFigure }

// compareRows are those of the tables, in their order.
var compareRows = func() (rows []compareRow) {
	for i := range engine.CompareFigures {
		rows = append(rows, compareRow{&engine.CompareFigures[i]})
	}
	return rows
}()

// known reports whether any of the cars has the figure.
func (w compareRow) known(cars []engine.Compared) bool {
	for i := range cars {
		if w.Of(&cars[i].Figures).Valid() {
			return true
		}
	}
	return false
}

// cells returns the row of a table: each car's figure and its difference from the
// yardstick.
func (w compareRow) cells(r *report, cars []engine.Compared, yardstick string) []string {
	cells := []string{w.Label, w.Unit(r.Style)}
	for i := range cars {
		change := ""
		if !w.Place {
			by := w.Of(&cars[i].Difference)
			change = differs(cars[i], yardstick, number.Signed(float64(by), w.text(r, by)))
		}
		cells = append(cells, w.text(r, w.Of(&cars[i].Figures)), change)
	}
	return cells
}

// text writes a value of the figure with the signs of a keyboard.
func (w compareRow) text(r *report, x engine.Number) string {
	return number.Plain(w.Number(r.Style, r.file, x))
}
