package drawing

import (
	"math"

	"toewright/internal/drawing/dxf"
)

// paper is a sheet with its margins, mm: ISO 5457 leaves 20 at the left to be filed by.
type paper struct {
	name                     string
	wide, high               float64
	left, right, bottom, top float64
}

// papers to print on.
var papers = map[string]paper{
	"a4":     {"A4", 210, 297, 20, 10, 10, 10},
	"letter": {"Letter", 215.9, 279.4, 15, 10, 7, 7},
}

// plots are sheets for a drawing at 1:1.
var plots = []paper{
	papers["a4"],
	{"A3", 420, 297, 20, 10, 10, 10}, {"A2", 594, 420, 20, 10, 10, 10},
	{"A1", 841, 594, 20, 10, 10, 10}, {"A0", 1189, 841, 20, 10, 10, 10},
}

// scales are those of ISO 5455.
var scales = []struct {
	name string
	by   float64
}{{"1:1", 1}, {"1:2", 0.5}, {"1:5", 0.2}, {"1:10", 0.1}, {"1:20", 0.05}}

// sheet is a drawing of one arm or of both.
type sheet struct {
	*pen
	parts   []*part
	paper   paper
	scale   float64
	scaled  string // as it is written
	version string
}

// Sizes of a sheet, mm.
const (
	sideWide  = 35.0 // of what stands beside the views
	titleWide = 190.0
	rowHigh   = 3.9 // of the table
	lineHigh  = 2.7 // of notes
	gap       = 3.0
)

// printed returns the sheet on a paper at the largest scale at which its views have room.
func printed(parts []*part, on paper, version string) *sheet {
	for _, z := range scales {
		s := &sheet{&pen{}, parts, on, z.by, z.name, version}
		if s.lay() || z == scales[len(scales)-1] {
			return s
		}
	}
	return nil
}

// plotted returns the sheet at 1:1, on the smallest paper that has room for it.
func plotted(parts []*part, version string) *sheet {
	for i, on := range plots {
		s := &sheet{&pen{}, parts, on, 1, "1:1", version}
		if s.lay() || i == len(plots)-1 {
			return s
		}
	}
	return nil
}

// drawing returns what is drawn.
func (s *sheet) drawing() *dxf.Drawing {
	return &dxf.Drawing{Remark: "mm, " + s.scaled + ". " + s.parts[0].title, Layers: layers, Entities: s.drawn}
}

// lay draws the sheet, and reports whether the views had room.
func (s *sheet) lay() (room bool) {
	p := &s.paper
	w, h := p.wide-p.left-p.right, p.high-p.bottom-p.top
	s.border(w, h)
	wide := math.Min(w, titleWide)
	left := p.left + w - wide
	bottom := p.bottom
	s.titleBlock(left, bottom, wide)
	bottom += s.blockHigh()
	bottom += s.table(left, bottom, wide)
	top := p.bottom + h - gap
	room = true
	x := p.left + gap
	side := p.left + w - sideWide - gap
	for i, part := range s.parts {
		list, bw, bh := part.block(s.scale, s.hand(i))
		room = room && x+bw <= side-gap && top-bh >= bottom
		s.add(shifted(list, x, top-bh)...)
		if i == 0 {
			room = s.notes(side, s.detail(side, top, part)) >= bottom && room
		}
		top -= bh + gap
	}
	return room
}

// hand says how a right arm is to the left one.
func (s *sheet) hand(i int) string {
	if i == 0 {
		return ""
	}
	if opposite(s.parts[0], s.parts[1]) {
		return "mirror image of the left"
	}
	return "unlike the left"
}

// border draws the frame of the sheet, its trimmed edge and its centring marks, by ISO 5457.
func (s *sheet) border(w, h float64) {
	p := &s.paper
	for _, by := range []float64{0, 0.2} { // a line of 0.7
		s.rect(outline, p.left-by, p.bottom-by, w+2*by, h+2*by)
	}
	s.rect(words, 0, 0, p.wide, p.high)
	x, y := p.wide/2, p.high/2
	s.line(words, x, 3, x, p.bottom)
	s.line(words, x, p.high-3, x, p.high-p.top)
	s.line(words, 3, y, p.left, y)
	s.line(words, p.wide-3, y, p.wide-p.right, y)
}
