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
	*subject
	paper  paper
	scale  float64
	scaled string // as it is written
	fitting

	column float64  // width of what stands beside the views
	long   []string // what had no room in its field
}

// subject is what a sheet is of.
type subject struct {
	parts   []*part
	loads   *loaded // nil where the study states no load cases
	version string
}

// fitting is what a sheet does for its scale's sake.
type fitting struct {
	under    bool // the notes stand under the views, in place of beside them
	mirrored bool // a right arm that is the mirror image of the left is not drawn
	noLoads  bool // nor the table of loads
}

// fittings are tried one after the other.
var fittings = []fitting{{}, {under: true}, {mirrored: true}, {mirrored: true, under: true}, {noLoads: true}, {noLoads: true, under: true}}

// Sizes of a sheet, mm.
const (
	leastColumn = 35.0 // of what stands beside the views
	mostColumn  = 62.0
	blanksWide  = 44.0 // of blanks in place of the section through the eye
	titleWide   = 190.0
	rowHigh     = 3.6 // of the tables
	lineHigh    = 2.7 // of notes
	gap         = 3.0
)

// printed returns the sheet on a paper at the largest scale at which its views have room.
func printed(of *subject, on paper) (s *sheet) {
	for _, z := range scales {
		for _, f := range fittings {
			if f.mirrored && !of.mirrored() || f.noLoads && of.loads == nil {
				continue
			}
			s = &sheet{pen: &pen{}, subject: of, paper: on, scale: z.by, scaled: z.name, fitting: f}
			if s.lay() {
				return s
			}
		}
	}
	return s
}

// plotted returns the sheet at 1:1, on the smallest paper that has room for it.
func plotted(of *subject) (s *sheet) {
	for _, on := range plots {
		s = &sheet{pen: &pen{}, subject: of, paper: on, scale: 1, scaled: "1:1"}
		if s.lay() {
			return s
		}
	}
	return s
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
	bottom += s.smallPrint(left, bottom, wide)
	bottom += s.table(left, bottom, wide)
	if s.loads != nil && !s.noLoads {
		bottom += s.loadTable(left, bottom, wide)
	}
	top, x := p.bottom+h-gap, p.left+gap
	room = true
	widest, from := 0.0, top
	for i, part := range s.shown() {
		list, bw, bh := part.block(s.scale, s.hand(i))
		widest = math.Max(widest, bw)
		room = room && from-bh >= bottom
		s.add(shifted(list, x, from-bh)...)
		from -= bh + gap
	}
	if s.under {
		detail := leastColumn
		if !s.parts[0].holed() {
			detail = blanksWide
		}
		s.column = (w - detail - 5*gap) / 2
		at, y, below := x, from-gap, x+detail+2*gap
		if beside := p.left + w - detail - gap; widest <= beside-gap-x {
			at, y, below = beside, top, x
		}
		return min(s.check(at, s.detail(at, y, s.parts[0])), s.notes(below, from-gap)) >= bottom && room && widest <= w-2*gap
	}
	s.column = math.Min(mostColumn, w-widest-3*gap)
	room = room && s.column >= leastColumn
	s.column = math.Max(leastColumn, s.column)
	side := p.left + w - s.column - gap
	return s.check(side, s.notes(side, s.detail(side, top, s.parts[0]))) >= bottom && room
}

// shown are the arms whose views are drawn.
func (s *sheet) shown() []*part {
	if s.fitting.mirrored {
		return s.parts[:1]
	}
	return s.parts
}

// mirrored reports whether the sheet is of both arms and the right one is the mirror image of
// the left.
func (s *subject) mirrored() bool { return len(s.parts) > 1 && opposite(s.parts[0], s.parts[1]) }

// hand says how a right arm is to the left one.
func (s *sheet) hand(i int) string {
	switch {
	case len(s.shown()) < len(s.parts):
		return "right arm: its mirror image"
	case i == 0:
		return ""
	case s.subject.mirrored():
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
