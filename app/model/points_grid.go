package model

import (
	"cmp"
	"fmt"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// PointText writes a coordinate of a point as its cell shows it: in inches as a fraction,
// where fractions are shown and it is one.
func PointText(d *study.Document, p study.PlacedPoint, axis int) string {
	n, mm := NumbersOf(d), d.Units.Millimetres(p.Place[axis])
	if text := n.Exact(n.Units.FromMillimetres(mm), true); strings.Contains(text, "/") {
		return text
	}
	return n.LengthDecimal(mm)
}

// TypePoint takes what was typed over a coordinate. A text that is what stood there leaves
// the number as it is, to the last decimal, and makes it the car's own.
func (s *Session) TypePoint(p study.PlacedPoint, axis int, text string) error {
	if text == PointText(s.doc, p, axis) {
		return s.SetPoint(p, axis, p.Place[axis])
	}
	mm, err := NumbersOf(s.doc).ParseLength(text)
	if err != nil {
		return err
	}
	return s.SetPoint(p, axis, s.doc.Units.FromMillimetres(mm))
}

// IsBlock reports whether a text that is pasted is more than one cell of a spreadsheet.
func IsBlock(text string) bool { return strings.ContainsAny(strings.Trim(text, "\r\n"), "\t\n") }

// PastePoints puts a block of cells, as spreadsheets copy them, over the coordinates of rows
// of points, from one coordinate of one row on, in one step. An empty cell leaves what stands
// there. Where one cell cannot be read, or has no place, nothing is put; the error names its
// line and column in the block. It returns how many coordinates were put.
func (s *Session) PastePoints(rows []PointRow, at, axis int, text string) (count int, err error) {
	n, d := NumbersOf(s.doc), s.doc.Units
	var paths []string
	points := map[int]study.PlacedPoint{}
	for i, line := range strings.Split(strings.Trim(strings.ReplaceAll(text, "\r", ""), "\n"), "\n") {
		for j, cell := range strings.Split(line, "\t") {
			if cell = strings.TrimSpace(cell); cell == "" {
				continue
			}
			mm, err := n.ParseLength(cell)
			switch {
			case at+i >= len(rows) || axis+j >= GridColumns:
				err = fmt.Errorf("the block ends beyond the table, and %q has no place", cell)
			case err != nil:
				err = fmt.Errorf("%s, %s: %w", rows[at+i].Label, axisName(axis+j), err)
			}
			if err != nil {
				return 0, fmt.Errorf("nothing was pasted: line %d, column %d: %w", i+1, j+1, err)
			}
			p, ok := points[at+i]
			if !ok {
				p = rows[at+i].PlacedPoint
			}
			p.Place[axis+j] = d.FromMillimetres(mm)
			points[at+i] = p
			paths = append(paths, s.doc.SourcePath(p)+"."+axisName(axis+j))
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

// PointSD writes by how much a fit of readings takes the coordinates of a point to be off, one
// standard deviation: what the study states, else what is usual for a tape. "" is said of a
// template's, which nobody measured, and of one that the study holds for exact.
func PointSD(d *study.Document, p study.PlacedPoint) string {
	var each [3]string
	for axis := range each {
		each[axis] = coordinateSD(d, p, axis)
	}
	if each[0] == each[1] && each[1] == each[2] {
		return each[0]
	}
	for axis := range each {
		each[axis] = cmp.Or(each[axis], "–")
	}
	return strings.Join(each[:], " ")
}

func coordinateSD(d *study.Document, p study.PlacedPoint, axis int) string {
	n := NumbersOf(d)
	switch {
	case IsTheirs(d, p, axis):
		return ""
	case d.Priors == nil:
		return n.TravelNumber(solver.CoordinateTolerance)
	}
	for _, prior := range d.Priors {
		key, side, _ := strings.Cut(prior.Parameter, "@")
		if key == p.Name+"."+axisName(axis) && (side == "" || side == string(p.Side)) {
			return n.TravelNumber(d.Units.Millimetres(prior.SD))
		}
	}
	return ""
}

// axisName returns the letter of an axis.
func axisName(axis int) string { return "xyz"[axis : axis+1] }

// IsTheirs reports whether one coordinate of a point is a template's, nobody's own.
func IsTheirs(d *study.Document, p study.PlacedPoint, axis int) bool {
	return d.Sources.At(d.SourcePath(p)+"."+axisName(axis)) == study.FromTemplate
}
