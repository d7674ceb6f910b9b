package model

import "strings"

// GridMode says what the keyboard does in a [Grid].
type GridMode uint8

// The modes.
const (
	Walking GridMode = iota // keys go about the cells, and what is typed replaces what stands in one
	Typing                  // a text takes the place of what stands in the cell; arrows take it and go on
	Within                  // the text of the cell is edited; arrows go about in it
)

// GridColumns is the number of cells in a row of a [Grid].
const GridColumns = 3

// Grid is a table of numbers as a keyboard goes about it: which cell is picked, and what is
// being typed there. It knows neither the numbers nor the screen.
type Grid struct {
	Row, Column int // of the cell that is picked
	Mode        GridMode
	Text        string // being typed; "" while walking
	Fault       error  // why Text was refused; nil where it was not
}

// Cells are what a [Grid] goes about.
type Cells struct {
	Rows  int
	Shown func(row, column int) string             // what stands in a cell
	Take  func(row, column int, text string) error // puts what was typed in its place
}

// Owns reports whether a key, such as "enter" or "shift tab", is the grid's, and neither the
// text's nor the page's.
func (g *Grid) Owns(key string, rows int) bool {
	switch key {
	case "f2":
		return true
	case "escape":
		return g.Mode != Walking
	}
	_, _, ok := g.way(key, rows)
	return ok
}

// Press does what a key of the grid means. What was typed is taken before another cell is
// picked; where it is refused the cell stays picked, with the text and the fault.
func (g *Grid) Press(key string, c *Cells) {
	switch {
	case !g.Owns(key, c.Rows):
	case key == "escape":
		g.drop()
	case key == "f2":
		g.Edit(c)
	case g.Settle(c):
		g.Row, g.Column, _ = g.way(key, c.Rows)
	}
}

// way returns the cell that a key leads to; ok is false for a key that leads nowhere in the
// grid.
func (g *Grid) way(key string, rows int) (row, column int, ok bool) {
	row, column = g.Row, g.Column
	at := row*GridColumns + column
	switch key {
	case "tab", "shift tab":
		if at++; key != "tab" {
			at -= 2
		}
		if at < 0 || at >= rows*GridColumns {
			return row, column, false // out of the grid
		}
		return at / GridColumns, at % GridColumns, true
	case "enter":
		row++
	case "shift enter":
		row--
	default:
		if g.Mode == Within {
			return row, column, false
		}
		if row, column, ok = g.arrow(key, rows); !ok {
			return row, column, false
		}
	}
	return max(0, min(row, rows-1)), max(0, min(column, GridColumns-1)), true
}

// arrow returns where a key leads that belongs to the text while that is edited. Home and
// End belong to what is typed, too.
func (g *Grid) arrow(key string, rows int) (row, column int, ok bool) {
	row, column = g.Row, g.Column
	switch key {
	case "arrowup":
		return row - 1, column, true
	case "arrowdown":
		return row + 1, column, true
	case "arrowleft":
		return row, column - 1, true
	case "arrowright":
		return row, column + 1, true
	}
	if g.Mode != Walking {
		return row, column, false
	}
	switch key {
	case "home":
		return row, 0, true
	case "end":
		return row, GridColumns - 1, true
	case "ctrl home":
		return 0, 0, true
	case "ctrl end":
		return rows - 1, GridColumns - 1, true
	}
	return row, column, false
}

// Type takes the text of the cell as it is typed.
func (g *Grid) Type(text string) {
	if g.Mode == Walking {
		g.Mode = Typing
	}
	g.Text, g.Fault = text, nil
}

// Edit goes into the text of the cell, or from there back to typing it.
func (g *Grid) Edit(c *Cells) {
	switch g.Mode {
	case Walking:
		g.Mode, g.Text = Within, c.Shown(g.Row, g.Column)
	case Typing:
		g.Mode = Within
	default:
		g.Mode = Typing
	}
}

// Pick goes to a cell by a press on it. What is typed in another one is taken; where it is
// refused that one stays picked.
func (g *Grid) Pick(row, column int, c *Cells) {
	if (row != g.Row || column != g.Column) && g.Settle(c) {
		g.Row, g.Column = row, column
	}
}

// Settle has what is typed taken, and reports false where it is refused. Nothing typed, and
// a text that was gone into and left as it stood, give back what stands there.
func (g *Grid) Settle(c *Cells) bool {
	if g.Mode != Walking && strings.TrimSpace(g.Text) != "" && !(g.Mode == Within && g.Text == c.Shown(g.Row, g.Column)) {
		if g.Fault = c.Take(g.Row, g.Column, g.Text); g.Fault != nil {
			return false
		}
	}
	g.drop()
	return true
}

// drop gives back what stands in the cell.
func (g *Grid) drop() { g.Mode, g.Text, g.Fault = Walking, "", nil }

// Clamp keeps the picked cell among so many rows, of which some may have gone.
func (g *Grid) Clamp(rows int) {
	if g.Row >= rows {
		g.drop()
		g.Row = max(0, rows-1)
	}
}
