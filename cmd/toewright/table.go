package main

import (
	"strings"
	"unicode/utf8"
)

// table is a table for people: the first column to the left, the others, which are
// numbers, to the right.
type table struct {
	rows [][]string
	left map[int]bool // columns to the left beside the first
	fold fold
}

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

// columnGap separates columns.
const columnGap = "  "

// String returns the table, its lines without blanks at the end, an empty line
// between its parts.
func (t *table) String() string {
	widths := t.widths()
	var b strings.Builder
	for i, columns := range t.fold.parts(widths) {
		if i > 0 {
			b.WriteString("\n")
		}
		t.writePart(&b, columns, widths)
	}
	return b.String()
}

// writePart writes the columns of the given numbers.
func (t *table) writePart(b *strings.Builder, columns, widths []int) {
	for _, row := range t.rows {
		var line strings.Builder
		for i, c := range columns {
			if c >= len(row) {
				break
			}
			if i > 0 {
				line.WriteString(columnGap)
			}
			t.writeCell(&line, c, row[c], widths[c])
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

func (t *table) writeCell(line *strings.Builder, column int, cell string, width int) {
	blanks := strings.Repeat(" ", width-utf8.RuneCountInString(cell))
	if column == 0 || t.left[column] {
		line.WriteString(cell + blanks)
		return
	}
	line.WriteString(blanks + cell)
}

// widths returns the width of each column in characters.
func (t *table) widths() []int {
	var widths []int
	for _, row := range t.rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	return widths
}
