package drawing

import (
	"cmp"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// cell is a field of the title block: a label, and a value or room to write in.
type cell struct {
	label, value string
	share        float64 // of the row's width
}

// titleBlock draws the fields of ISO 7200, those that are the maker's to state, and the
// cautions. Its lower left corner is at a place.
func (s *sheet) titleBlock(x, y, wide float64) {
	d, a := s.parts[0].study, s.parts[0].arm()
	rows := [][]cell{
		{{"Title", "Steering arm: " + cmp.Or(d.Name, "study without a name"), 5}, {"Part for", carName(s.parts[0].candidate()), 2}, {"Program", "toewright " + s.version, 1.6}},
		{{"Part number, left", a.NumberLeft, 1}, {"Part number, right", a.NumberRight, 1}, {"Revision", d.Revision, 0.5}, {"Date", d.Date, 0.7}, {"Drawn by", a.DrawnBy, 0.8}, {"Checked by", "", 0.8}, {"Sheet", "1 of 1", 0.5}},
		{{"Material", a.Material, 1.2}, {"Heat treatment", "", 1}, {"Finish", a.Finish, 1}, {"Scale", s.scaled, 0.5}, {"Sizes", s.parts[0].style.LengthUnit(), 0.5}, {"Paper", s.paper.name, 0.5}, {"Projection", "", 0.9}},
		{{"Grain, parting line", "", 1}, {"Draft", "", 0.6}, {"Machining stock", "", 0.8}, {"Section, web and boss", "", 1.1}, {"Stamp", "", 0.7}, {"Proof load", "", 0.7}, {"Tolerances not shown", "", 1}},
	}
	top := y + s.blockHigh()
	s.line(outline, x, top, x+wide, top)
	for i, row := range rows {
		s.row(x, top-fieldHigh, wide, fieldHigh, row)
		if i == projectionRow {
			s.projection(x+wide-8, top-fieldHigh/2)
		}
		top -= fieldHigh
	}
	s.text(words, x+1, y+1.2, letter, dxf.Left, engine.Cautions[0])
	if text := s.warning(); text != "" {
		s.text(words, x+1, y+lastHigh+0.8, letter, dxf.Left, upper(text))
		s.line(words, x, y+lastHigh, x+wide, y+lastHigh)
	}
}

// Heights in the title block, mm.
const (
	fieldHigh = 6.6
	lastHigh  = 4.5 // of a line of words under the fields

	fieldRows, projectionRow = 4, 2
)

// blockHigh is how high the title block is.
func (s *sheet) blockHigh() float64 {
	high := fieldRows*fieldHigh + lastHigh
	if s.warning() != "" {
		high += lastHigh
	}
	return high
}

// warning says that the car is invented, where it is.
func (s *sheet) warning() string { return s.parts[0].study.Borrowed().Warning() }

func (s *sheet) row(x, y, wide, high float64, row []cell) {
	total := 0.0
	for _, c := range row {
		total += c.share
	}
	s.line(words, x, y, x+wide, y)
	for i, c := range row {
		w := wide * c.share / total
		if i > 0 {
			s.line(words, x, y, x, y+high)
		}
		s.text(words, x+1, y+high-label-0.8, label, dxf.Left, c.label)
		if c.value != "" {
			size := min(letter-0.2, (w-2)/width(1, c.value))
			s.text(words, x+1, y+1, size, dxf.Left, c.value)
		}
		x += w
	}
}

// projection is the sign of third-angle projection by ISO 5456-2: a truncated cone from its
// small end at the left, and from its side, about a place.
func (s *sheet) projection(x, y float64) {
	const large, little, long = 2.0, 1.0, 4.0
	c := dxf.Point{X: x - 5, Y: y}
	s.add(dxf.Circle{Layer: words, Centre: c, Radius: large}, dxf.Circle{Layer: words, Centre: c, Radius: little},
		dxf.Polyline{Layer: words, Closed: true, Points: []dxf.Point{{X: x, Y: y - little}, {X: x + long, Y: y - large}, {X: x + long, Y: y + large}, {X: x, Y: y + little}}})
	s.add(dxf.Line{Layer: centre, From: dxf.Point{X: x - 8, Y: y}, To: dxf.Point{X: x + 5.5, Y: y}})
}

// candidate is the name of the part's car.
func (p *part) candidate() string { return p.car }

// carName returns how a sheet calls a car.
func carName(name string) string {
	if name == study.BaseName {
		return "base car"
	}
	return name
}

func upper(text string) string { return strings.ToUpper(text) }

// wrapped breaks a text between words into lines of a width in letters of a height.
func wrapped(text string, wide, high float64) (out []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && width(high, line+" "+word) > wide {
			out, line = append(out, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return append(out, line)
}
