package model

import (
	"strings"
	"unicode/utf8"

	"toewright/internal/number"
	"toewright/internal/study"
)

// grid returns the comparison as rows of texts: the names of the cars above, the figures
// and their units at the left. A figure of which left and right differ takes two rows.
func (c *Comparison) grid(name func(*Car) string) [][]string {
	head := []string{"", ""}
	for _, car := range c.Cars {
		head = append(head, name(car))
	}
	rows := [][]string{head}
	for i := range c.Rows {
		r := &c.Rows[i]
		if !r.split() {
			rows = append(rows, r.line(r.Label, 0))
			continue
		}
		rows = append(rows, r.line(r.Label+", left", 0), r.line(r.Label+", right", 1))
	}
	return rows
}

// split reports whether the sides of any car differ.
func (r *CompareRow) split() bool {
	for i := range r.Cells {
		if len(r.Cells[i].Text) > 1 {
			return true
		}
	}
	return false
}

// line returns the texts of one side.
func (r *CompareRow) line(label string, side int) []string {
	out := []string{label, r.Note}
	for i := range r.Cells {
		k, text := &r.Cells[i], ""
		if len(k.Text) > 0 {
			text = k.Text[min(side, len(k.Text)-1)]
		}
		if k.Broken {
			text = "✗ " + text
		}
		out = append(out, text)
	}
	return out
}

// CSV returns the comparison as a table for a spreadsheet, with the signs of a keyboard. A
// broken limit has an exclamation mark before its value. No title starts with what a
// spreadsheet takes for a formula.
func (c *Comparison) CSV(name func(*Car) string) []byte {
	rows := c.grid(func(car *Car) string { return "car " + name(car) })
	rows[0][0], rows[0][1] = "figure", "unit and limits"
	for _, row := range rows[1:] {
		for i := range row {
			row[i] = keyboardSigns.Replace(number.Plain(row[i]))
		}
	}
	return study.FormatTable(rows)
}

// keyboardSigns are those that [number.Plain] does not know.
var keyboardSigns = strings.NewReplacer("≤ ", "at most ", "≥ ", "at least ", "✗ ", "! ")

// Text returns the comparison as lines of text in columns.
func (c *Comparison) Text(name func(*Car) string) string {
	rows := c.grid(name)
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, text := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(text))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		line := ""
		for i, text := range row {
			gap := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(text))
			if i < 2 {
				line += text + gap + "  "
			} else {
				line += gap + text + "  "
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}
