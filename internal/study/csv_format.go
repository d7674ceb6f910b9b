package study

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"toewright/internal/number"
)

// FormatTable writes rows of cells set apart by commas. A cell that a spreadsheet would take
// for a formula, or a reader of tables for a remark, has an apostrophe before it, which
// those that read a table take off again.
func FormatTable(rows [][]string) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = guarded(cell)
		}
		if err := w.Write(cells); err != nil {
			panic(err) // a Buffer takes everything
		}
	}
	w.Flush()
	return b.Bytes()
}

// guarded returns a cell as it stands in a table.
func guarded(cell string) string {
	if risky(cell) {
		return "'" + cell
	}
	return cell
}

// unguarded undoes [guarded].
func unguarded(cell string) string {
	if rest, ok := strings.CutPrefix(cell, "'"); ok && risky(rest) {
		return rest
	}
	return cell
}

// risky reports whether a cell starts as a formula or a remark does, behind apostrophes or
// not, and is not a number.
func risky(cell string) bool {
	start := strings.TrimLeft(cell, "' \t\r\n")
	if start == "" || !strings.ContainsRune("=+-@#", rune(start[0])) {
		return false
	}
	_, err := number.ParseLength(cell, number.Millimetre)
	return err != nil
}

// plainNumber writes the shortest decimal that reads back as x, without an exponent.
func plainNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
