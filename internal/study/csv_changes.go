package study

import (
	"maps"
	"slices"

	"toewright/internal/spelling"
	"toewright/solver"
)

// changeColumns are the columns of a table whose titles are keys of parameters.
type changeColumns struct {
	*table
	doc  *Document
	keys map[int]changeColumn
}

// changeColumn is one of them.
type changeColumn struct {
	key       string
	parameter solver.Parameter
}

// newChangeColumns reads every column that is not among the known words as a
// parameter. It refuses a title that is neither.
func newChangeColumns(t *table, d *Document, known ...string) (*changeColumns, error) {
	design, err := d.Design()
	if err != nil {
		return nil, err
	}
	c := &changeColumns{table: t, doc: d, keys: map[int]changeColumn{}}
	for i, col := range t.header {
		if slices.Contains(known, col.word) || col.title == "" {
			continue
		}
		key, _ := cutTitle(col)
		p, _, err := solver.FindParameter(design, key)
		if err != nil {
			return nil, c.unknown(i, known, err)
		}
		c.keys[i] = changeColumn{key, p}
	}
	return c, nil
}

// cutTitle returns a column's title without its unit.
func cutTitle(c column) (string, bool) {
	if c.units == "" {
		return c.title, false
	}
	for i, r := range c.title {
		if r == ' ' || r == '(' || r == '[' || r == '_' {
			return c.title[:i], true
		}
	}
	return c.title, false
}

// unknown makes the error about a title that is neither a word of the table nor a
// parameter.
func (c *changeColumns) unknown(i int, known []string, err error) error {
	message := reason(err)
	if near := spelling.Nearest(c.header[i].word, known); near != "" {
		message = "unknown column; did you mean " + near + "?"
	}
	return c.titleError(i, message)
}

// parse reads the changes of a row; empty cells change nothing. It returns nil
// where all are empty.
func (c *changeColumns) parse(r *row) (Changes, error) {
	var changes Changes
	for _, i := range slices.Sorted(maps.Keys(c.keys)) {
		if r.cell(i) == "" {
			continue
		}
		col := c.keys[i]
		x, err := c.value(r, i, col.parameter)
		if err != nil {
			return nil, err
		}
		if changes == nil {
			changes = Changes{}
		}
		changes[col.key] = x
	}
	return changes, nil
}

// value reads a cell as a length in file units or as degrees.
func (c *changeColumns) value(r *row, i int, p solver.Parameter) (float64, error) {
	if p.Quantity == solver.AngleQuantity {
		return c.number(r, i)
	}
	return c.length(r, i, c.doc.Units)
}

// changeKeys lists every key of several changes, each once, by the alphabet.
func changeKeys(list []Changes) []string {
	all := map[string]bool{}
	for _, changes := range list {
		for key := range changes {
			all[key] = true
		}
	}
	return slices.Sorted(maps.Keys(all))
}

// changeCells writes changes under keys.
func changeCells(changes Changes, keys []string) []string {
	cells := make([]string, len(keys))
	for i, key := range keys {
		if x, ok := changes[key]; ok {
			cells[i] = plainNumber(x)
		}
	}
	return cells
}
