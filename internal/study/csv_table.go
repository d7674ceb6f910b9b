package study

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"toewright/internal/number"
)

// CSVError reports a cell or line of a table that cannot be used.
type CSVError struct {
	Line    int    // Line counts from 1, the header included.
	Column  int    // Column counts from 1; 0 for the line as a whole.
	Header  string // Header is what stands above the column, if anything.
	Message string
}

// Error gives the place and the message in one line.
func (e *CSVError) Error() string {
	place := fmt.Sprintf("line %d", e.Line)
	if e.Column > 0 {
		place += fmt.Sprintf(", column %d", e.Column)
	}
	if e.Header != "" {
		place += fmt.Sprintf(" (%s)", e.Header)
	}
	return place + ": " + e.Message
}

// table is a CSV text with its header apart.
type table struct {
	header  []column
	rows    []row
	comma   rune // comma sets the cells apart.
	assumed bool // assumed is the header, as none stands in the table.
}

// row is one line of a table.
type row struct {
	line  int
	cells []string
}

// column is a column of a table by what stands above it: the word in small
// letters and digits alone, and a unit if one is stated.
type column struct {
	title, word string
	units       Units
}

// parseTable reads a table whose cells are set apart by tabs, else semicolons,
// else commas: as spreadsheets paste and save them. Empty lines and lines that
// start with # do not count. Where isHeader refuses the first line, the header is
// that of byDefault.
func parseTable(data []byte, isHeader func([]column) bool, byDefault ...string) (*table, error) {
	if len(data) > limits.Bytes {
		return nil, &CSVError{Line: 1, Message: fmt.Sprintf("table of %d bytes is too long, want at most %d", len(data), limits.Bytes)}
	}
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return nil, &CSVError{Line: 1, Message: "table is not UTF-8 text; save it as CSV in UTF-8"}
	}
	data = plainLines(data)
	rows := parseRows(data)
	if len(rows) == 0 {
		return nil, &CSVError{Line: 1, Message: "table is empty"}
	}
	t := &table{header: columnsOf(rows[0].cells), rows: rows[1:], comma: separator(data)}
	if !isHeader(t.header) {
		t.header, t.rows, t.assumed = columnsOf(byDefault), rows, true
	}
	if len(t.rows) == 0 {
		return nil, &CSVError{Line: rows[0].line, Message: "table has a header alone, and no line under it"}
	}
	return t, cmp.Or(t.checkWidth(), t.checkCommas(), t.checkThousands(), t.checkTwice())
}

// plainLines returns a text whose lines end in one way, be they those of any machine.
func plainLines(data []byte) []byte {
	return bytes.ReplaceAll(bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
}

// checkTwice refuses a second column of one title, which nobody would read.
func (t *table) checkTwice() error {
	for i, c := range t.header {
		if c.word != "" && t.find(c.word) < i {
			return t.titleError(i, "the column stands twice")
		}
	}
	return nil
}

// titleError makes an error about the title of a column.
func (t *table) titleError(i int, message string) error {
	return &CSVError{Line: 1, Column: i + 1, Header: t.header[i].title, Message: message}
}

// checkWidth refuses a cell where the table has no column: it is most often the second
// half of a number with a decimal comma.
func (t *table) checkWidth() error {
	for i := range t.rows {
		for k, cell := range t.rows[i].cells {
			if cell == "" || k < len(t.header) && t.header[k].title != "" {
				continue
			}
			message := fmt.Sprintf("%q stands where no column is", number.Clip(cell))
			if t.comma == ',' {
				message += "; with decimal commas, set cells apart by semicolons or tabs"
			}
			return &CSVError{Line: t.rows[i].line, Column: k + 1, Message: message}
		}
	}
	return nil
}

// parseRows splits a text into lines of trimmed cells.
func parseRows(data []byte) []row {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	r.Comma = separator(data)
	r.Comment = '#'
	r.FieldsPerRecord = -1
	r.LazyQuotes = true
	r.TrimLeadingSpace = r.Comma != '\t'
	var rows []row
	for {
		cells, err := r.Read()
		if err != nil { // the end: with lazy quotes and any count of cells nothing else is one
			return rows
		}
		line, _ := r.FieldPos(0)
		if trim(cells) {
			rows = append(rows, row{line, cells})
		}
	}
}

// separator returns what sets the cells of a text apart: the first line that counts tells
// it, or the text where that line is of one cell.
func separator(data []byte) rune {
	for _, text := range [][]byte{firstLine(data), data} {
		for _, r := range "\t;," {
			if bytes.ContainsRune(text, r) {
				return r
			}
		}
	}
	return ','
}

// firstLine returns the first line that is neither empty nor a remark.
func firstLine(data []byte) []byte {
	for line := range bytes.Lines(bytes.TrimPrefix(data, []byte("\ufeff"))) {
		if line = bytes.TrimSpace(line); len(line) > 0 && line[0] != '#' {
			return line
		}
	}
	return nil
}

// trim takes space off cells and reports whether any has text.
func trim(cells []string) bool {
	text := false
	for i := range cells {
		cells[i] = unguarded(strings.TrimSpace(cells[i]))
		text = text || cells[i] != ""
	}
	return text
}

// columnsOf reads the titles of columns.
func columnsOf(titles []string) []column {
	columns := make([]column, len(titles))
	for i, title := range titles {
		c := column{title: title, word: plainWord(title)}
		for _, suffix := range []struct {
			text  string
			units Units
		}{{"mm", Millimetre}, {"inches", Inch}, {"inch", Inch}, {"in", Inch}} {
			if before, ok := cutUnitWord(title, suffix.text); ok {
				c.word, c.units = plainWord(before), suffix.units
				break
			}
		}
		columns[i] = c
	}
	return columns
}

// cutUnitWord cuts a unit off the end of a title if it stands apart from the word
// before: "x (mm)", "x [mm]", "x_mm", "x mm".
func cutUnitWord(title, unit string) (string, bool) {
	before, ok := strings.CutSuffix(strings.ToLower(strings.TrimRight(title, ")] ")), unit)
	if !ok || before == "" || !strings.ContainsAny(before[len(before)-1:], "([ _,-") {
		return "", false
	}
	return before, true
}

// plainWord keeps letters and digits, as small letters: "Lower ball-joint" and
// "lowerBallJoint" are the same.
func plainWord(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}

// find returns the index of the column whose word is one of words, or -1.
func (t *table) find(words ...string) int {
	for i, c := range t.header {
		for _, word := range words {
			if c.word == word {
				return i
			}
		}
	}
	return -1
}

// cell returns the text of a row in a column; cells beyond the end are empty.
func (r *row) cell(i int) string {
	if i < 0 || i >= len(r.cells) {
		return ""
	}
	return r.cells[i]
}

// errorf makes an error about a cell.
func (t *table) errorf(r *row, i int, format string, args ...any) error {
	e := &CSVError{Line: r.line, Message: fmt.Sprintf(format, args...)}
	if i >= 0 {
		e.Column = i + 1
		e.Header = t.header[i].title
	}
	return e
}

// number reads a cell as a plain number.
func (t *table) number(r *row, i int) (float64, error) {
	x, ok := number.ParsePlain(r.cell(i))
	if !ok {
		return 0, t.errorf(r, i, "%.40q is not a number", r.cell(i))
	}
	return x, nil
}

// length reads a cell as a length and returns it in u; the column's unit, or one
// in the cell, goes before.
func (t *table) length(r *row, i int, u Units) (float64, error) {
	measured := u
	if t.header[i].units != "" {
		measured = t.header[i].units
	}
	x, err := number.ParseLength(r.cell(i), measured)
	if err != nil {
		return 0, t.errorf(r, i, "%v", err)
	}
	return measured.Convert(x, u), nil
}
