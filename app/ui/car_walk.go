package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// pointCells finds the fields of coordinates in their order: three to a row.
const pointCells = `.point input.number`

// cellsOfPoint is the number of coordinates of a row.
const cellsOfPoint = 3

// walk has the keyboard go about the coordinates as about a table: arrows and Enter go to the
// next cell, whose text the first key replaces; F2 goes into the text. A block that is pasted
// fills the cells from there on.
func (c *car) walk(ctx app.Context) {
	keys := listen("keydown", func(e app.Value) {
		if cells, at := cellOf(e); at >= 0 {
			c.step(e, cells, at)
		}
	})
	pastes := listen("paste", func(e app.Value) {
		_, at := cellOf(e)
		if at < 0 {
			return
		}
		text := e.Get("clipboardData").Call("getData", "text/plain").String()
		if strings.ContainsAny(strings.Trim(text, "\r\n"), "\t\n") {
			e.Call("preventDefault")
			ctx.Dispatch(func(ctx app.Context) { c.paste(ctx, at, text) })
		}
	})
	c.deaf = func() { keys(); pastes() }
}

// cellOf returns the coordinates' fields and which of them an event comes from; -1 for none.
func cellOf(e app.Value) (cells app.Value, at int) {
	target := e.Get("target")
	if !strings.HasPrefix(target.Get("id").String(), "point-") {
		return nil, -1
	}
	cells = app.Window().Get("document").Call("querySelectorAll", pointCells)
	for i := range cells.Length() {
		if cells.Index(i).Get("id").String() == target.Get("id").String() {
			return cells, i
		}
	}
	return nil, -1
}

// step goes from a cell where a key leads to.
func (c *car) step(e app.Value, cells app.Value, at int) {
	cell := e.Get("target")
	to := at
	switch stroke(e) {
	case "f2":
		e.Call("preventDefault")
		end := len([]rune(cell.Get("value").String()))
		cell.Call("setSelectionRange", end, end)
		return
	case "enter", "arrowdown":
		to += cellsOfPoint
	case "shift enter", "arrowup":
		to -= cellsOfPoint
	case "arrowleft":
		if wholeChosen(cell) && at%cellsOfPoint > 0 {
			to--
		}
	case "arrowright":
		if wholeChosen(cell) && at%cellsOfPoint < cellsOfPoint-1 {
			to++
		}
	}
	if to == at || to < 0 || to >= cells.Length() {
		return // the field's own matter
	}
	e.Call("preventDefault")
	cells.Index(to).Call("focus") // which has what was typed in the other one taken
	cells.Index(to).Call("select")
}

// paste puts a block over the cells from one on.
func (c *car) paste(ctx app.Context, at int, text string) {
	d := c.Bench.document()
	rows := append(model.PointRows(d, c.side), model.PointRows(d, "")...)
	count := 0
	err := c.Bench.edit(ctx, func() (err error) {
		count, err = c.Bench.session().PastePoints(rows, at/cellsOfPoint, at%cellsOfPoint, text)
		return err
	})
	if err == nil {
		takenOver++
		c.Bench.Say(ctx, "Pasted: "+number.Count(count, "coordinate")+".", c.Bench.Undo)
	}
}

// theirs is the class of a coordinate that is a template's.
func theirs(d *study.Document, row *model.PointRow, axis int) string {
	return when(model.IsTheirs(d, row.PlacedPoint, axis), "theirs", "")
}
