package drawing

import (
	"cmp"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// noteStep is from one line of the notes to the next, mm.
const noteStep = 2 * letterHeight

// notes returns what stands in words under the views, and the tolerances that were assumed.
func (p *part) notes(above []dxf.Entity) (out []dxf.Entity) {
	lo, _ := dxf.Extent(above)
	at := dxf.Point{X: lo.X, Y: lo.Y - 2*noteStep}
	out = p.position(&at)
	for _, line := range wrapped(p.lines()) {
		out = append(out, dxf.Text{Layer: words, At: at, Height: letterHeight, Value: line})
		at.Y -= noteStep
	}
	return append(out, projection(dxf.Point{X: at.X + 2*noteStep, Y: at.Y - noteStep})...)
}

// position draws the tolerance frame of the hole's place to the face and the bolts: what the
// study's tolerances assume is what is asked for.
func (p *part) position(at *dxf.Point) (out []dxf.Entity) {
	for _, zone := range []struct {
		words string
		width float64
		round bool
	}{{"hole, square to the stud", 2 * p.within("steeringArmLength", "steeringArmOffset"), true}, {"ball, along the stud", 2 * p.within("tieRodOuterHeight"), false}} {
		if zone.width == 0 {
			continue
		}
		text := p.length(zone.width)
		if zone.round {
			text = "Ø" + text
		}
		x := at.X
		for _, cell := range []string{"", text, "A", "B"} {
			if cell == "" {
				out, x = append(out, positionSign(dxf.Point{X: x, Y: at.Y})...), x+2*letterHeight
				continue
			}
			frame, right := framed(dimension, dxf.Point{X: x, Y: at.Y}, cell)
			out, x = append(out, frame...), right
		}
		out = append(out, dxf.Text{Layer: words, At: dxf.Point{X: x + letterHeight, Y: at.Y + letterHeight/2}, Height: letterHeight, Value: zone.words})
		at.Y -= noteStep + letterHeight
	}
	return out
}

// positionSign is the sign of position by ISO 1101 in its cell: a circle with a cross.
func positionSign(at dxf.Point) []dxf.Entity {
	const r = letterHeight / 2
	c := dxf.Point{X: at.X + 2*r, Y: at.Y + 2*r}
	edge := []dxf.Point{at, {X: at.X + 4*r, Y: at.Y}, {X: at.X + 4*r, Y: at.Y + 4*r}, {X: at.X, Y: at.Y + 4*r}}
	return []dxf.Entity{
		dxf.Polyline{Layer: dimension, Points: edge, Closed: true},
		dxf.Circle{Layer: dimension, Centre: c, Radius: r},
		dxf.Line{Layer: dimension, From: dxf.Point{X: c.X - 1.5*r, Y: c.Y}, To: dxf.Point{X: c.X + 1.5*r, Y: c.Y}},
		dxf.Line{Layer: dimension, From: dxf.Point{X: c.X, Y: c.Y - 1.5*r}, To: dxf.Point{X: c.X, Y: c.Y + 1.5*r}},
	}
}

// standardWidth is how many standard deviations a stated one is asked for to either side.
const standardWidth = 3.0

// within returns the least plus-minus, mm, that the study states for parameters of this
// side; 0 where it states none.
func (p *part) within(keys ...string) float64 {
	least := 0.0
	for _, t := range p.study.Tolerances {
		for _, key := range keys {
			if t.Parameter != key && t.Parameter != key+"@"+p.side {
				continue
			}
			width := p.study.Units.Millimetres(cmp.Or(t.PlusMinus, standardWidth*t.SD))
			if least == 0 || width < least {
				least = width
			}
		}
	}
	return least
}

// lines are the notes.
func (p *part) lines() []string {
	d, a := p.study, p.study.Arm
	if a == nil {
		a = &study.Arm{}
	}
	list := []string{
		cmp.Or(d.Name, "Steering arm") + ": " + p.title,
		"Part number: " + p.number() + "   Revision: " + d.Revision + "   Date: " + d.Date + "   Drawn by: " + a.DrawnBy,
		"Material: " + a.Material + "   Finish: " + a.Finish,
		"Heat treatment, grain, draft, stock, sections, stamp, proof load: the maker's to state",
		"Sizes in " + p.style.LengthUnit() + ", drawing in mm at 1:1, third angle. Framed sizes are exact; in brackets, change from the original hole, which is dashed.",
		"Sizes end at the centre of the outer ball. A: face of the arm. B: line of the bolts, from the first.",
	}
	if text := p.holeWords(); text != "" {
		list = append(list, "Hole: "+text)
	}
	if ball := d.OuterBall(); ball != nil && ball.Stud != nil {
		list = append(list, "Ball over the face that clamps its stud: "+p.length(d.Units.Millimetres(ball.Stud.Height)))
	} else if p.large > 0 {
		list = append(list, "The height of the ball over the face that clamps its stud is not stated: the hole is drawn at the ball")
	}
	for _, words := range engine.Cautions {
		list = append(list, number.Plain(words))
	}
	return list
}

// longestNote is the most letters of a line of the notes; the format takes 255.
const longestNote = 110

// wrapped breaks lines between words.
func wrapped(lines []string) (out []string) {
	for _, line := range lines {
		short := ""
		for _, word := range strings.Fields(line) {
			if short != "" && len(short)+1+len(word) > longestNote {
				out, short = append(out, short), ""
			}
			short = strings.TrimSpace(short + " " + word)
		}
		out = append(out, short)
	}
	return out
}

// projection is the sign of third-angle projection by ISO 5456-2: a truncated cone from its
// small end at the left, and from its side.
func projection(at dxf.Point) []dxf.Entity {
	const large, small, long = 4.0, 2.0, 8.0
	x := at.X + 2*large
	side := []dxf.Point{{X: x, Y: at.Y - small}, {X: x + long, Y: at.Y - large}, {X: x + long, Y: at.Y + large}, {X: x, Y: at.Y + small}}
	return []dxf.Entity{
		dxf.Circle{Layer: words, Centre: at, Radius: large},
		dxf.Circle{Layer: words, Centre: at, Radius: small},
		dxf.Polyline{Layer: words, Points: side, Closed: true},
	}
}
