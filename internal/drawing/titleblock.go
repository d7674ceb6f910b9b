package drawing

import (
	"cmp"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// cell is a field of the title block: a label, and a value or room to write in.
type cell struct{ label, value string }

// titleBlock draws the fields of ISO 7200, those that are the maker's to state, and the
// cautions. Its lower left corner is at a place.
func (s *sheet) titleBlock(x, y, wide float64) {
	p := s.parts[0]
	d := p.study
	rows := [fieldRows][]cell{
		{{"Title", "Steering arm: " + cmp.Or(d.Name, "study without a name")}, {"Part for", carName(p.car)}, {"Program", "toewright " + s.version}},
		append(s.stated(study.ArmNumbers), cell{"Revision", d.Revision}, cell{"Date", d.Date}, cell{"Sheet", "1 of 1"}),
		append(s.stated(study.ArmSteel), cell{"Scale", s.scaled}, cell{"Sizes", p.style.LengthUnit()}, cell{"Paper", s.paper.name}, cell{projectionLabel, ""}),
		s.stated(study.ArmForging),
	}
	top := y + s.blockHigh()
	s.line(outline, x, top, x+wide, top)
	for _, row := range rows {
		s.row(x, top-fieldHigh, wide, row)
		top -= fieldHigh
	}
	s.text(words, x+1, y+1.2, letter, dxf.Left, engine.Cautions[0])
	if text := s.warning(); text != "" {
		s.text(words, x+1, y+lastHigh+0.8, letter, dxf.Left, upper(text))
		s.line(words, x, y+lastHigh, x+wide, y+lastHigh)
	}
}

// longestStated is the most of a maker's text, in characters, that has room in the notes.
const longestStated = 240

// stated returns what the maker states of a group; blank where he does not.
func (s *sheet) stated(g study.ArmGroup) (row []cell) {
	for _, t := range study.ArmTexts {
		if t.Group == g {
			row = append(row, cell{t.Label, *t.At(s.parts[0].arm())})
		}
	}
	return row
}

// Heights in the title block, mm.
const (
	fieldHigh = 6.6
	lastHigh  = 4.5 // of a line of words under the fields

	fieldRows = 4
)

// projectionLabel is that of the field with the projection's sign, and signWide what that takes
// of it.
const (
	projectionLabel = "Projection"
	signWide        = 14.0
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

// smallPrint writes, over a place, where the loads come from and what is not in the figures,
// and returns how high it is.
func (s *sheet) smallPrint(x, y, wide float64) (high float64) {
	lines := wrapped(strings.Join(append(s.loadWords(), engine.Cautions[1:]...), " "), wide-2, small)
	for i := range lines {
		s.text(words, x+1, y+1+float64(len(lines)-1-i)*lineHigh, small, dxf.Left, lines[i])
	}
	return float64(len(lines))*lineHigh + 1
}

// leastCell is what a hand needs to write in, mm.
const leastCell = 15.0

// row draws fields in a row, each as wide as its words ask for and an even share of what is
// left. What asks for more than there is, the longest first, stands in the notes.
func (s *sheet) row(x, y, wide float64, row []cell) {
	need := make([]float64, len(row))
	left := wide
	for i := range row {
		need[i] = row[i].need()
		left -= need[i]
	}
	for left < 0 {
		most := 0
		for i := range row {
			if need[i]-row[i].noted().need() > need[most]-row[most].noted().need() {
				most = i
			}
		}
		c := &row[most]
		if c.value == noted {
			break
		}
		s.long = append(s.long, c.label+": "+clipped(c.value, longestStated))
		left += need[most]
		*c = c.noted()
		need[most] = c.need()
		left -= need[most]
	}
	s.line(words, x, y, x+wide, y)
	for i, c := range row {
		w := need[i] + left/float64(len(row))
		if i > 0 {
			s.line(words, x, y, x, y+fieldHigh)
		}
		s.text(words, x+1, y+fieldHigh-label-0.8, label, dxf.Left, c.label)
		if c.label == projectionLabel {
			s.projection(x+w-signWide/2, y+fieldHigh/2)
		}
		s.text(words, x+1, y+1, letter-0.2, dxf.Left, c.value)
		x += w
	}
}

// noted stands in a field whose value stands in the notes.
const noted = "in the notes"

func (c cell) noted() cell { return cell{c.label, noted} }

// need is how wide the field asks to be.
func (c cell) need() float64 {
	least := width(label, c.label) + 2
	switch {
	case c.label == projectionLabel:
		return least + signWide
	case c.value == "":
		return max(least, leastCell)
	}
	return max(least, width(letter-0.2, c.value)+2.5)
}

// projection is the sign of the projection by ISO 5456-2, from memory: a truncated cone from
// its side, its small end at the left, and the same from that end, which stands there in third
// angle and at the other end in first, about a place.
func (s *sheet) projection(x, y float64) {
	const large, little, half, apart = 2.0, 1.0, 2.0, 3.5
	round := x - apart
	if s.parts[0].firstAngle {
		round = x + apart
	}
	c := dxf.Point{X: round, Y: y}
	from := 2*x - round - half
	s.add(dxf.Circle{Layer: words, Centre: c, Radius: large}, dxf.Circle{Layer: words, Centre: c, Radius: little},
		dxf.Polyline{Layer: words, Closed: true, Points: []dxf.Point{{X: from, Y: y - little}, {X: from + 2*half, Y: y - large}, {X: from + 2*half, Y: y + large}, {X: from, Y: y + little}}})
	s.add(dxf.Line{Layer: centre, From: dxf.Point{X: x - apart - large - 1, Y: y}, To: dxf.Point{X: x + apart + large + 1, Y: y}})
	s.line(centre, round, y-large-1, round, y+large+1)
}

// clipped cuts a text that has more than most characters, and says so.
func clipped(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + " … (in full in the study)"
	}
	return text
}

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
