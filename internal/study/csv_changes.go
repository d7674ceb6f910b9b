package study

import (
	"maps"
	"slices"
	"strings"

	"toewright/internal/spelling"
	"toewright/solver"
)

// changeColumns are the columns of a table whose titles are keys or labels of parameters.
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
	labelled := parameterWords(design)
	for i, col := range t.header {
		if slices.Contains(known, col.word) || col.title == "" {
			continue
		}
		key, _ := cutTitle(col)
		p, _, err := solver.FindParameter(design, key)
		if k, ok := labelled[strings.TrimSuffix(col.word, "deg")]; err != nil && ok {
			key = k
			p, _, err = solver.FindParameter(design, key)
		}
		if err != nil {
			return nil, c.unknown(i, known, err)
		}
		c.keys[i] = changeColumn{key, p}
	}
	return c, nil
}

// parameterWords returns the keys of a car's parameters by the words that people write
// for them: label or key, in any spelling of letters and spaces, with a side before or
// behind.
func parameterWords(design *solver.Design) map[string]string {
	words := map[string]string{}
	for _, p := range solver.Parameters(design) {
		for _, name := range [2]string{plainWord(p.Label), plainWord(p.Key)} {
			words[name] = p.Key
			for _, s := range sides {
				if p.Sided() {
					words[name+string(s)], words[string(s)+name] = p.Key+"@"+string(s), p.Key+"@"+string(s)
				}
			}
		}
	}
	return words
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
