package drawing

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
	"toewright/internal/number"
	"toewright/internal/study"
)

// table draws the sizes of each arm, exact and to make, and what rounding costs in toe, over
// a place, and returns how high it is.
func (s *sheet) table(x, y, wide float64) (high float64) {
	first := s.parts[0]
	const labelWide = 58.0
	heads := []string{"exact", "to make", "off", "original"}
	col := (wide - labelWide) / float64(len(heads)*len(s.parts))
	rows := len(first.sizes) + 1
	high = float64(rows+2) * rowHigh
	top := y + high
	s.line(outline, x, top, x+wide, top)
	base := func(row int) float64 { return top - float64(row+1)*rowHigh + (rowHigh-small)/2 }
	s.text(words, x+1, base(0), small, dxf.Left, "SIZES OF THE BALL'S CENTRE, "+first.style.LengthUnit())
	s.text(words, x+1, base(1), small, dxf.Left, "made to "+first.style.Exact(s.step(), true)+" "+first.style.LengthUnit()+"; in brackets: to check")
	for j, p := range s.parts {
		left := x + labelWide + float64(j*len(heads))*col
		s.text(words, left+col*2, base(0), small, dxf.Middle, upper(p.Side))
		for i, h := range heads {
			s.text(words, left+float64(i+1)*col-1, base(1), small, dxf.Right, h)
		}
		s.line(words, left, top, left, top-float64(rows+2)*rowHigh)
	}
	s.line(words, x, top-2*rowHigh, x+wide, top-2*rowHigh)
	cells := func(row int, label string, of func(p *part) [4]string) {
		s.text(words, x+1, base(row), small, dxf.Left, label)
		for j, p := range s.parts {
			for i, text := range of(p) {
				s.text(words, x+labelWide+(float64(j*len(heads)+i)+1)*col-1, base(row), small, dxf.Right, text)
			}
		}
		s.line(words, x, top-float64(row+1)*rowHigh, x+wide, top-float64(row+1)*rowHigh)
	}
	for i := range first.sizes {
		sign := first.sizes[i].Sign()
		cells(i+2, first.Part.Words(first.Side, i), func(p *part) [4]string {
			z := &p.sizes[i]
			return [4]string{p.fine(sign * z.exact), p.madeText(sign * z.made), number.Signed(sign*z.Off(), p.fine(sign*(z.made-z.exact))), p.fine(sign * z.was)}
		})
	}
	cells(len(first.sizes)+2, "(steering arm, level, axis to ball)", func(p *part) [4]string {
		mm := p.study.Units.Millimetres
		return [4]string{p.fine(mm(p.Arm.After)), "", "", p.fine(mm(p.Arm.Before))}
	})
	s.line(outline, x, y, x+wide, y)
	return high
}

// fine writes a length with one more decimal than is shown, so that a rounding is seen.
func (p *part) fine(mm float64) string { return p.style.LengthFine(mm) }

// cost says what rounding costs in toe.
func (s *sheet) cost() string {
	n := &s.parts[0].style
	var list []string
	for _, q := range s.parts {
		text := "not reached"
		if q.Peak.Valid() && q.PeakMade.Valid() {
			text = n.Toe(float64(q.Peak)) + ", " + n.Toe(float64(q.PeakMade))
		}
		list = append(list, q.Side+" "+text)
	}
	return "Largest toe change less target (" + n.ToeUnit() + "), exact and as made: " + strings.Join(list, "; ") + "."
}

// step returns what sizes are made to, in the unit shown.
func (s *sheet) step() float64 {
	d := s.parts[0].study
	return d.Units.Convert(s.parts[0].step, s.parts[0].style.Units)
}

// notes writes what is to be known of the drawing, downward from a place, in two columns where
// they stand under the views, and returns where they end.
func (s *sheet) notes(x, y float64) (below float64) {
	list, lines := s.noted(), 0
	wrap := make([][]string, len(list))
	for i, note := range list {
		wrap[i] = wrapped(fmt.Sprintf("%d  %s", i+1, number.Plain(note)), s.column, small)
		lines += len(wrap[i])
	}
	y -= small
	s.text(words, x, y, small, dxf.Left, "NOTES")
	y -= lineHigh
	top, lowest, written := y, y, 0
	for _, note := range wrap {
		if s.under && y < top && 2*written >= lines { // the second column
			x, y, lines = x+s.column+gap, top, 3*lines
		}
		for _, line := range note {
			s.text(words, x, y, small, dxf.Left, line)
			y -= lineHigh
		}
		written += len(note)
		y -= 0.5
		lowest = min(lowest, y)
	}
	return lowest
}

// check draws a line to check a print's scale by, downward from a place, and returns where it
// ends.
func (s *sheet) check(x, y float64) (below float64) {
	y -= 2
	const long = 30
	s.line(outline, x, y, x+long, y)
	s.line(words, x, y-1.2, x, y+1.2)
	s.line(words, x+long, y-1.2, x+long, y+1.2)
	s.text(words, x, y-small-1.5, small, dxf.Left, "30 mm, to check the print")
	return y - small - 1.5
}

func (s *sheet) noted() []string {
	p := s.parts[0]
	list := []string{"Sizes end at the centre of the outer ball" + p.ballWords()}
	switch {
	case p.face == nil:
		list = append(list, "No face or bolts are stated. A: centre of the original ball. B: steering axis. Sizes along the car's axes, as it was measured.")
	case len(p.face.bolts) == 0:
		list = append(list, "A: face on the knuckle. No bolts are stated: sizes from the face's point.")
	default:
		list = append(list, "A: face on the knuckle. B: bolt holes; sizes from the lower one.")
	}
	list = append(list,
		"Framed sizes are exact. Zones lie across and along the stud. "+s.assumed(),
		"Dashed: original hole; in brackets: change from it.",
		"Two-dot lines: the form is the maker's, as are empty fields.",
		s.cost(),
	)
	if text := p.studWords(); text != "" {
		list = append(list, text)
	}
	return append(list, s.long...)
}

// ballWords says where the hole stands to the ball.
func (p *part) ballWords() string {
	if p.height() == 0 {
		return "; its height over the face that clamps the stud is not stated, the hole is drawn at the ball."
	}
	return ", " + p.length(p.height()) + " over the face that clamps the stud."
}

// studWords says how the hole's axis stands to the datums.
func (p *part) studWords() string {
	if p.face == nil {
		return ""
	}
	for i := range p.sizes {
		if z := &p.sizes[i]; sineTo(p.stud, z.along) < trueView {
			return "Axis of the hole: " + map[string]string{"face": "square to A.", "bolts": "along the line of the bolts.", "across": "along A, square to the line of the bolts."}[z.Of]
		}
	}
	return "Axis of the hole: at the framed angles to A and the line of the bolts."
}

func sineTo(a, b r3.Vec) float64 { return r3.Norm(r3.Cross(a, b)) }

// degreesOf returns the angle between a direction of the paper and upright.
func degreesOf(x, y float64) float64 { return math.Atan2(abs(x), abs(y)) * 180 / math.Pi }

// assumed says what the zones are made of.
func (s *sheet) assumed() string {
	var list []string
	seen := map[study.Tolerance]bool{}
	for _, p := range s.parts {
		for _, z := range p.Part.Zones {
			for _, t := range z.Of {
				if !seen[t] {
					seen[t] = true
					list = append(list, p.toleranceWords(&t))
				}
			}
		}
	}
	const most = 4 // that have room
	if n := len(list) - most; n > 0 {
		list = append(list[:most], fmt.Sprintf("%d more", n))
	}
	if len(list) == 0 {
		return "They are to be agreed: the study assumes none."
	}
	return "As the study assumes: " + strings.Join(list, ", ") + "."
}

func (p *part) toleranceWords(t *study.Tolerance) string {
	text := study.Spoken(t.Parameter)
	if t.SD > 0 {
		return text + " sd " + p.length(p.study.Units.Millimetres(t.SD)) + ", asked for to three"
	}
	return text + " ±" + p.length(p.study.Units.Millimetres(t.PlusMinus))
}
