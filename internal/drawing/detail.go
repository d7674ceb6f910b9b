package drawing

import (
	"fmt"
	"math"

	"toewright/internal/drawing/dxf"
	"toewright/internal/number"
)

// detail draws a section of the eye along the stud, downward from a place, and returns where
// it ends: both ends of the taper, and where the ball stands.
func (s *sheet) detail(x, y float64, p *part) (below float64) {
	y -= small
	if !p.holed() {
		s.text(words, x, y, small, dxf.Left, "HOLE FOR THE STUD")
		for _, line := range [...]string{"large end Ø ________", "small end Ø ________", "taper ________", "eye ________ thick", "ball over the gauge plane ________"} {
			y -= 1.5 * lineHigh
			s.text(words, x, y, small, dxf.Left, line)
		}
		return y - 2*lineHigh
	}
	scale := s.scale
	for _, z := range scales { // the largest at which it has room
		if scale = z.by; p.large*2*scale <= 24 && (p.thickness+p.height())*scale <= 45 {
			s.text(words, x, y, small, dxf.Left, "EYE ALONG STUD, "+z.name)
			break
		}
	}
	if s.scaled == "1:1" {
		scale = 1
	}
	c := x + leastColumn/2 - 3
	top := y - 6 - p.height()*scale - 2 // face that clamps
	bottom := top - p.thickness*scale
	l, m, wide := p.large/2*scale, p.small/2*scale, p.boss()*scale
	for _, side := range []float64{-1, 1} {
		s.line(outline, c+side*l, top, c+side*m, bottom)
		s.line(outline, c+side*l, top, c+side*wide, top)
		s.line(outline, c+side*m, bottom, c+side*wide, bottom)
		s.add(dxf.Line{Layer: centre, Lines: dxf.Phantom, From: dxf.Point{X: c + side*wide, Y: top}, To: dxf.Point{X: c + side*wide, Y: bottom}})
		for h := 2.0; h < (wide-l)+p.thickness*scale; h += 2.5 {
			s.hatch(c, side, l, m, wide, top, bottom, h)
		}
	}
	ball := top + p.height()*scale
	s.line(centre, c, bottom-3, c, ball+4)
	s.line(centre, c-4, ball, c+4, ball)
	s.add(dxf.Mark{Layer: centre, At: dxf.Point{X: c, Y: ball}})
	right := c + wide + 4
	s.line(dimension, c+wide+1, top, right+beyondEnd, top)
	s.line(dimension, c+wide+1, bottom, right+beyondEnd, bottom)
	k := &sheetView{pen: s.pen, part: p}
	k.heads(dxf.Point{X: right, Y: bottom}, dxf.Point{X: right, Y: top})
	s.text(dimension, right+1, (top+bottom)/2-small/2, small, dxf.Left, p.length(p.thickness))
	if p.height() > 0 {
		s.line(dimension, c+4, ball, right+beyondEnd, ball)
		k.heads(dxf.Point{X: right, Y: top}, dxf.Point{X: right, Y: ball})
		s.text(dimension, right+1, (top+ball)/2-small/2, small, dxf.Left, p.length(p.height()))
	}
	const name = "ball"
	left := max(c-wide-1, x+width(small, name)+1)
	s.line(dimension, left, ball, c-4, ball)
	s.text(words, x, ball-small/2, small, dxf.Left, name)
	y = bottom - 3 - lineHigh
	for _, line := range p.holeWords() {
		for _, part := range wrapped(line, leastColumn, small) {
			s.text(words, x, y, small, dxf.Left, part)
			y -= lineHigh
		}
	}
	return y - 2
}

// holed reports whether enough is stated of the hole to draw it.
func (p *part) holed() bool { return p.large > 0 && p.thickness > 0 }

// hatch draws one line of a section at 45 degrees on one side of the hole: from the face that
// clamps down and away from the hole, cut by hole and edge.
func (s *sheet) hatch(c, side, l, m, wide, top, bottom, h float64) {
	// The line x + (top - y) = l + h runs through the section.
	hole := func(y float64) float64 { return m + (l-m)*(y-bottom)/(top-bottom) }
	y1, y2 := math.Min(top, top-(l+h-wide)), bottom
	for y := y1; y > y2; y -= 0.1 {
		if l+h-(top-y) < hole(y) {
			y2 = y
			break
		}
	}
	if y1 <= y2 {
		return
	}
	s.line(words, c+side*(l+h-(top-y1)), y1, c+side*(l+h-(top-y2)), y2)
}

// height is that of the ball over the face that clamps its stud, mm; 0 where not stated.
func (p *part) height() float64 {
	if ball := p.study.OuterBall(); ball != nil && ball.Stud != nil {
		return p.study.Units.Millimetres(ball.Stud.Height)
	}
	return 0
}

// holeWords says what the hole is like.
func (p *part) holeWords() []string {
	if p.small == p.large {
		return []string{"Ø" + p.length(p.large) + " through"}
	}
	taper := p.study.Arm.Hole.Taper
	list := []string{
		"Ø" + p.length(p.large) + " at the face that clamps the stud (gauge plane), towards the ball",
		"Ø" + p.length(p.small) + " at the other face",
		fmt.Sprintf("Taper %s of diameter by length, %s° included", number.Trimmed(taper, 5), number.Decimal(2*math.Atan(taper/2)*180/math.Pi, 2)),
	}
	if p.height() == 0 {
		list = append(list, "Ball over the gauge plane: ________")
	}
	return list
}
