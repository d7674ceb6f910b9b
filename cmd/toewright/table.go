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
}

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

// columnGap separates columns.
const columnGap = "  "

// String returns the table, its lines without blanks at the end.
func (t *table) String() string {
	widths := t.widths()
	var b strings.Builder
	for _, row := range t.rows {
		var line strings.Builder
		for i, cell := range row {
			if i > 0 {
				line.WriteString(columnGap)
			}
			blanks := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if i == 0 || t.left[i] {
				line.WriteString(cell + blanks)
			} else {
				line.WriteString(blanks + cell)
			}
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
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
