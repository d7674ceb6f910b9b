package model

import (
	"fmt"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
)

// PointText writes a coordinate of a point as its cell shows it: in inches as a fraction,
// where fractions are shown and it is one.
func PointText(d *study.Document, p *PointRow, axis int) string {
	if p.Direction {
		return number.Trimmed(p.Place[axis], directionDecimals)
	}
	n, mm := NumbersOf(d), d.Units.Millimetres(p.Place[axis])
	if text := n.Exact(n.Units.FromMillimetres(mm), true); strings.Contains(text, "/") {
		return text
	}
	return n.LengthDecimal(mm)
}

// directionDecimals are enough for a direction to be as true as any that is measured.
const directionDecimals = 4

// TypePoint takes what was typed over a coordinate. A text that is what stood there leaves
// the number as it is, to the last decimal, and makes it the car's own.
func (s *Session) TypePoint(p PointRow, axis int, text string) error {
	value := p.Place[axis]
	if text != PointText(s.doc, &p, axis) {
		var err error
		if value, err = s.readPlace(&p, text); err != nil {
			return err
		}
	}
	return s.SetPlace(p, axis, value)
}

// readPlace reads a coordinate, in file units.
func (s *Session) readPlace(p *PointRow, text string) (float64, error) {
	if p.Direction {
		return ParseNumber(text)
	}
	mm, err := NumbersOf(s.doc).ParseLength(text)
	return s.doc.Units.FromMillimetres(mm), err
}

// IsBlock reports whether a text that is pasted is more than one cell of a spreadsheet.
func IsBlock(text string) bool { return strings.ContainsAny(strings.Trim(text, "\r\n"), "\t\n") }

// PastePoints puts a block of cells, as spreadsheets copy them, over the coordinates of rows
// of points, from one coordinate of one row on, in one step. An empty cell leaves what stands
// there. Where one cell cannot be read, or has no place, nothing is put; the error names its
// line and column in the block. It returns how many coordinates were put.
func (s *Session) PastePoints(rows []PointRow, at, axis int, text string) (count int, err error) {
	var paths []string
	places := map[int]study.Vec3{}
	for i, line := range strings.Split(strings.Trim(strings.ReplaceAll(text, "\r", ""), "\n"), "\n") {
		for j, cell := range strings.Split(line, "\t") {
			if cell = strings.TrimSpace(cell); cell == "" {
				continue
			}
			var value float64
			if at+i >= len(rows) || axis+j >= GridColumns {
				err = fmt.Errorf("the block ends beyond the table, and %q has no place", cell)
			} else if value, err = s.readPlace(&rows[at+i], cell); err != nil {
				err = fmt.Errorf("%s, %s: %w", rows[at+i].Label, axisName(axis+j), err)
			}
			if err != nil {
				return 0, fmt.Errorf("nothing was pasted: line %d, column %d: %w", i+1, j+1, err)
			}
			place, ok := places[at+i]
			if !ok {
				place = rows[at+i].Place
			}
			place[axis+j] = value
			places[at+i] = place
			paths = append(paths, rows[at+i].Path+"."+axisName(axis+j))
		}
	}
	return len(paths), s.edit("points pasted", "", func(d *study.Document) {
		for i, place := range places {
			rows[i].put(d, place)
		}
	}, func(d *study.Document) {
		d.Attribute(s.doc, study.FromTyping)
		for _, path := range paths {
			d.SetSource(path, study.FromTyping)
		}
	})
}

// axisName returns the letter of an axis.
func axisName(axis int) string { return "xyz"[axis : axis+1] }

// IsTheirs reports whether one coordinate of a point is a template's, nobody's own.
func IsTheirs(d *study.Document, p *PointRow, axis int) bool {
	return d.Sources.At(p.Path+"."+axisName(axis)) == study.FromTemplate
}
