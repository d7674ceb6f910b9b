package study

import (
	"fmt"
	"slices"
	"strings"

	"toewright/internal/number"
)

// In a table whose cells commas set apart, "-60,6,72" is three cells, or a travel and a
// reading of 6,72. Most often the count of cells tells; what is left is refused where it
// could be read either way, rather than split.

// checkCommas refuses cells that commas set apart where one of them must have been a
// decimal comma: nobody writes 5 as 05, or a cell more than there are columns.
func (t *table) checkCommas() error {
	if t.comma != ',' || t.hasDecimals() {
		return nil
	}
	for i := range t.rows {
		r := &t.rows[i]
		for k := range r.cells {
			tail := r.cell(k)
			if t.halves(r, k) && (len(tail) > 1 && tail[0] == '0' || len(r.cells) > len(t.header)) {
				return t.commaError(r, k, "")
			}
		}
	}
	return nil
}

// checkThousands refuses a cell such as "1,200" that may be a number of thousands as well as one
// with a decimal comma: where another number has a decimal point; and, unless commas are decimal
// ones, where they set the cells apart, or another number of the column is whole.
func (t *table) checkThousands() error {
	points, commas := t.hasDecimals(), t.hasDecimalCommas()
	for i := range t.rows {
		r := &t.rows[i]
		for k, cell := range r.cells {
			if thousands(cell) && !t.isText(k) && (points || !commas && (t.comma == ',' || t.hasWhole(k))) {
				return t.errorf(r, k, "%q may be thousands, or one number with a decimal comma; write it without a comma, or with a point", cell)
			}
		}
	}
	return nil
}

// hasDecimalCommas reports whether commas in numbers are decimal ones, as where semicolons set the
// cells apart, and where one stands before other than three digits.
func (t *table) hasDecimalCommas() bool {
	return t.comma == ';' || slices.ContainsFunc(t.rows, func(r row) bool {
		for k, cell := range r.cells {
			_, _, ok := commaNumber(cell)
			if ok && !t.isText(k) && !thousands(cell) {
				return true
			}
		}
		return false
	})
}

// hasWhole reports whether a column has a whole number other than 0.
func (t *table) hasWhole(k int) bool {
	return slices.ContainsFunc(t.rows, func(r row) bool { return wholeNumber(r.cell(k)) && r.cell(k) != "0" })
}

// thousands reports whether a cell is a number that may have a comma after its thousands.
func thousands(cell string) bool {
	whole, rest, ok := commaNumber(cell)
	return ok && len(whole) <= 3 && whole[0] != '0' && len(rest) == 3
}

// commaNumber returns the digits before and behind the one comma of a number.
func commaNumber(cell string) (whole, rest string, ok bool) {
	whole, rest, ok = strings.Cut(strings.TrimLeft(cell, signs), ",")
	return whole, rest, ok && digits(whole) && digits(rest)
}

// checkByChance refuses a table of whole numbers that fits its columns, of which only the
// first must be filled, whether its commas are decimal ones or not: cells beyond the
// second under no header, or on some lines only.
func (t *table) checkByChance() error {
	if t.comma != ',' || len(t.header) < 3 {
		return nil
	}
	var longest, shortest *row
	for i := range t.rows {
		r := &t.rows[i]
		if slices.ContainsFunc(r.cells, func(cell string) bool { return cell == "" || !wholeNumber(cell) }) {
			return nil
		}
		if longest == nil || len(r.cells) > len(longest.cells) {
			longest = r
		}
		if shortest == nil || len(r.cells) < len(shortest.cells) {
			shortest = r
		}
		if len(r.cells) > 2 && !t.halves(r, 2) {
			return nil
		}
	}
	if longest == nil || len(longest.cells) < 3 || !t.assumed && len(longest.cells) == len(shortest.cells) {
		return nil
	}
	return t.commaError(longest, 2, ", or put a header over the table and fill every line")
}

// hasDecimals reports whether a number of the table has a decimal point, so that its
// commas are none.
func (t *table) hasDecimals() bool {
	return slices.ContainsFunc(t.rows, func(r row) bool {
		return slices.ContainsFunc(r.cells, func(cell string) bool {
			_, ok := number.ParsePlain(cell)
			return ok && strings.Contains(cell, ".")
		})
	})
}

// halves reports whether a cell and the one before it could be two halves of one number.
func (t *table) halves(r *row, k int) bool {
	return k > 0 && !t.isText(k-1) && !t.isText(k) && wholeNumber(r.cell(k-1)) && digits(r.cell(k))
}

// isText reports whether a column holds words, be they written in digits.
func (t *table) isText(k int) bool {
	return k < len(t.header) && slices.Contains(textColumns, t.header[k].word)
}

var textColumns = slices.Concat(pointColumns[0], pointColumns[1], []string{"gauge", "run", "slot", "name", "part", "excludes", "note"})

// signs are what may stand before a number.
const signs = "-+−–"

// wholeNumber reports whether a cell is digits, with or without a sign.
func wholeNumber(cell string) bool { return digits(strings.TrimLeft(cell, signs)) }

// digits reports whether a cell is digits alone.
func digits(cell string) bool { return cell != "" && strings.Trim(cell, "0123456789") == "" }

// commaError makes the error about a cell that may be the second half of a number.
func (t *table) commaError(r *row, k int, way string) error {
	return &CSVError{Line: r.line, Column: k + 1, Message: fmt.Sprintf(
		"\"%s,%s\" may be one number with a decimal comma; write it with a point, or set cells apart by semicolons or tabs%s",
		number.Clip(r.cell(k-1)), number.Clip(r.cell(k)), way)}
}
