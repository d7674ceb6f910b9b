package study

import (
	"slices"
	"strconv"
	"strings"
)

// ParseReadings reads a table of gauge readings for the document's car, one line
// for each travel: under a header, in any order, "travel" with "left", "right" or
// both, or else "travel", "side" and "reading"; "gauge", "base", "repeatability",
// "run" if wanted; every other column is the key of a parameter that differed
// from the base car. Without a header the columns are travel, left, right. Rows of
// one side, run and set-up make one reading, in their order; what the table does
// not say is taken from usual. The error is a [*CSVError] that names line and
// column.
func ParseReadings(data []byte, d *Document, usual Reading) ([]Reading, error) {
	t, err := parseTable(data, isReadingHeader, "travel", "left", "right")
	if err != nil {
		return nil, err
	}
	if err := t.checkByChance(); err != nil {
		return nil, err
	}
	p := &readingParser{
		table: t, doc: d, usual: usual, places: map[string]int{},
		travel: t.find("travel"), left: t.find("left"), right: t.find("right"),
		side: t.find("side"), reading: t.find("reading"), gauge: t.find("gauge"),
		base: t.find("base"), repeatability: t.find("repeatability"), run: t.find("run"),
	}
	if p.left < 0 && p.right < 0 && (p.side < 0 || p.reading < 0) {
		return nil, &CSVError{Line: 1, Message: "want columns left or right, or side and reading, beside travel"}
	}
	if p.changes, err = newChangeColumns(t, d, "travel", "left", "right", "side", "reading", "gauge", "base", "repeatability", "run"); err != nil {
		return nil, err
	}
	for i := range t.rows {
		if err := p.parse(&t.rows[i]); err != nil {
			return nil, err
		}
	}
	return p.runs, nil
}

// isReadingHeader reports whether a line names the travel.
func isReadingHeader(columns []column) bool {
	t := table{header: columns}
	return t.find("travel") >= 0
}

// readingParser reads rows of a table of readings into runs.
type readingParser struct {
	*table
	doc                                *Document
	usual                              Reading
	travel, left, right, side, reading int
	gauge, base, repeatability, run    int
	changes                            *changeColumns
	runs                               []Reading
	places                             map[string]int // places are those of the runs, by their marks.
}

// parse reads one row, which may hold a reading of each side.
func (p *readingParser) parse(r *row) error {
	travel, err := p.length(r, p.travel, p.doc.Units)
	if err != nil {
		return err
	}
	for _, s := range []struct {
		side   Side
		column int
	}{{Left, p.left}, {Right, p.right}} {
		if r.cell(s.column) == "" {
			continue
		}
		if err := p.add(r, s.side, travel, s.column); err != nil {
			return err
		}
	}
	if p.reading < 0 || r.cell(p.reading) == "" {
		return nil
	}
	side := Side(strings.ToLower(r.cell(p.side)))
	if side != Left && side != Right {
		return p.errorf(r, p.side, "%.40q is not a side, want left or right", r.cell(p.side))
	}
	return p.add(r, side, travel, p.reading)
}

// add puts a reading into its run, or starts a new one.
func (p *readingParser) add(r *row, side Side, travel float64, column int) error {
	value, err := p.length(r, column, p.doc.Units)
	if err != nil {
		return err
	}
	head, err := p.head(r, side)
	if err != nil {
		return err
	}
	mark := head.mark(r.cell(p.run))
	i, ok := p.places[mark]
	if !ok {
		i = len(p.runs)
		p.runs, p.places[mark] = append(p.runs, head), i
	}
	p.runs[i].Values = append(p.runs[i].Values, [2]float64{travel, value})
	return nil
}

// head returns the run that a row belongs to, without its values.
func (p *readingParser) head(r *row, side Side) (Reading, error) {
	head := p.usual
	head.Side, head.Values = side, nil
	if g := strings.ToLower(r.cell(p.gauge)); g != "" {
		if !slices.Contains(gauges, g) {
			return head, p.errorf(r, p.gauge, "%.40q is not a gauge, want %s", g, strings.Join(gauges, ", "))
		}
		head.Gauge = g
	}
	for _, v := range []struct {
		column int
		target *float64
	}{{p.base, &head.Base}, {p.repeatability, &head.Repeatability}} {
		if err := p.positive(r, v.column, v.target); err != nil {
			return head, err
		}
	}
	changes, err := p.changes.parse(r)
	if changes != nil {
		head.Changes = changes
	}
	return head, err
}

// gauges are the kinds of gauge that a reading may name.
var gauges = []string{"indicators", "plate", "dial", "tape"}

// positive reads a length above 0 where the cell has one.
func (p *readingParser) positive(r *row, column int, target *float64) error {
	if r.cell(column) == "" {
		return nil
	}
	x, err := p.length(r, column, p.doc.Units)
	if err == nil && !(x > 0) {
		err = p.errorf(r, column, "want more than 0, got %g", x)
	}
	*target = x
	return err
}

// mark returns a text that is the same for all rows of one run.
func (r *Reading) mark(run string) string {
	keys := changeKeys([]Changes{r.Changes})
	cells := append([]string{run, string(r.Side), r.Gauge, plainNumber(r.Base), plainNumber(r.Repeatability)}, keys...)
	return strings.Join(append(cells, changeCells(r.Changes, keys)...), "\x00")
}

// FormatReadings writes readings, in the units of the document they belong to, as
// a table that [ParseReadings] reads.
func FormatReadings(readings []Reading) []byte {
	var all []Changes
	for _, r := range readings {
		all = append(all, r.Changes)
	}
	keys := changeKeys(all)
	rows := [][]string{append([]string{"run", "side", "gauge", "base", "repeatability", "travel", "reading"}, keys...)}
	for i, r := range readings {
		head := []string{strconv.Itoa(i + 1), string(r.Side), r.Gauge, plainNumber(r.Base), optionalNumber(r.Repeatability)}
		for _, v := range r.Values {
			cells := append(slices.Clone(head), plainNumber(v[0]), plainNumber(v[1]))
			rows = append(rows, append(cells, changeCells(r.Changes, keys)...))
		}
	}
	return FormatTable(rows)
}

// optionalNumber writes nothing for 0.
func optionalNumber(x float64) string {
	if x == 0 {
		return ""
	}
	return plainNumber(x)
}
