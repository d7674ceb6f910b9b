package model

import (
	"fmt"
	"strings"

	"toewright/internal/study"
)

// PastePoints puts a block of cells, as spreadsheets copy them, over the coordinates of rows
// of points, from one coordinate of one row on, in one step. An empty cell leaves what stands
// there. A cell that cannot be read, or one too many, is refused with all others. It returns
// how many coordinates were put.
func (s *Session) PastePoints(rows []PointRow, at, axis int, text string) (count int, err error) {
	n, d := NumbersOf(s.doc), s.doc.Units
	var paths []string
	points := map[int]study.PlacedPoint{}
	for i, line := range strings.Split(strings.Trim(strings.ReplaceAll(text, "\r", ""), "\n"), "\n") {
		for j, cell := range strings.Split(line, "\t") {
			if cell = strings.TrimSpace(cell); cell == "" {
				continue
			}
			if at+i >= len(rows) || axis+j > 2 {
				return 0, fmt.Errorf("the block ends beyond the table: %q has no place", cell)
			}
			mm, err := n.ParseLength(cell)
			if err != nil {
				return 0, fmt.Errorf("%s, %s: %w", rows[at+i].Label, "xyz"[axis+j:axis+j+1], err)
			}
			p, ok := points[at+i]
			if !ok {
				p = rows[at+i].PlacedPoint
			}
			p.Place[axis+j] = d.FromMillimetres(mm)
			points[at+i] = p
			paths = append(paths, s.doc.SourcePath(p)+"."+"xyz"[axis+j:axis+j+1])
		}
	}
	return len(paths), s.edit("points pasted", "", func(d *study.Document) {
		for _, p := range points {
			d.SetPoint(p)
		}
	}, func(d *study.Document) {
		d.Attribute(s.doc, study.FromTyping)
		for _, path := range paths {
			d.SetSource(path, study.FromTyping)
		}
	})
}

// IsTheirs reports whether one coordinate of a point is a template's, nobody's own.
func IsTheirs(d *study.Document, p study.PlacedPoint, axis int) bool {
	return d.Sources.At(d.SourcePath(p)+"."+"xyz"[axis:axis+1]) == study.FromTemplate
}
