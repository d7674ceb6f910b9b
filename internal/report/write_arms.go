package report

import (
	"math"
	"strings"

	"toewright/internal/drawing"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// arms writes the steering arms: their drawing where the hole moves, no larger than so many mm,
// and beside it their dimensions.
func (p *page) arms() {
	p.open("section", "")
	p.element("h2", "", "Steering arm")
	drawn := p.moves(&p.Arm.Sides[0]) || p.moves(&p.Arm.Sides[1])
	if !drawn {
		p.element("p", "", "The hole for the outer ball stays where it is.")
	}
	if drawn {
		wide, high := 130.0, 105.0
		if !p.sameArm(&p.Arm.Sides[0], &p.Arm.Sides[1]) {
			wide, high = 116, 80
		}
		p.open("div", "pair")
		p.open("figure", "drawn")
		p.text = drawing.AppendInline(p.text, p.Study, p.Arm, wide, high)
		p.close("figure")
	}
	p.open("div", "")
	p.armTable()
	p.close("div")
	if drawn {
		p.close("div")
	}
	p.stated()
	p.element("p", "small", p.armWords(drawn))
	p.close("section")
}

// armWords says how drawing and dimensions are meant.
func (p *page) armWords(drawn bool) string {
	text := ""
	if drawn {
		text = "Framed sizes are exact and hold; dashed is the original hole, in brackets the change from it. The part drawing has them larger. " +
			"Each dimension of the table is that of the hole or taper for the outer ball from the original one. "
		if p.Arm.Sides[0].Face != nil {
			text += "The face, A, is the one the arm is bolted to, B its bolts. "
		}
	}
	return text + "Arm lengths are level, from the steering axis at the ball's height. Geometry, not strength."
}

// stated writes what the maker states of the arm in words.
func (p *page) stated() {
	if p.Study.Arm == nil {
		return
	}
	var list []string
	for _, t := range study.ArmTexts {
		if text := *t.At(p.Study.Arm); text != "" {
			list = append(list, t.Label+": "+text)
		}
	}
	if len(list) > 0 {
		p.element("p", "small", strings.Join(list, "; ")+".")
	}
}

// moves reports whether an arm's hole stands elsewhere than the original.
func (p *page) moves(a *engine.ArmSide) bool {
	return !p.n.nothing(a.Car[0]) || !p.n.nothing(a.Car[1]) || !p.n.nothing(a.Car[2])
}

// sameArm reports whether two arms are written with the same numbers.
func (p *page) sameArm(a, b *engine.ArmSide) bool {
	for i := range armRows {
		if armRows[i].cell(p, a) != armRows[i].cell(p, b) {
			return false
		}
	}
	return true
}

// armRow is a line of the table of dimensions.
type armRow struct {
	group, label string
	has          func(*engine.ArmSide) bool // nil for all
	text         func(*page, *engine.ArmSide) string
}

// cell returns what the row says of an arm; nothing where it does not apply.
func (r *armRow) cell(p *page, a *engine.ArmSide) string {
	if r.has != nil && !r.has(a) {
		return ""
	}
	return r.text(p, a)
}

// carRow is a line for the displacement along an axis of the car.
func carRow(label string, axis int) armRow {
	words := directionWords[axis]
	return armRow{carGroup, label, nil, func(p *page, a *engine.ArmSide) string {
		return p.n.moved(a.Car[axis], words[0], words[1])
	}}
}

// lengthRow is a line for a length before and after.
func lengthRow(group, label string, has func(*engine.ArmSide) bool, of func(*engine.ArmSide) engine.Lengths) armRow {
	return armRow{group, label, has, func(p *page, a *engine.ArmSide) string {
		l := of(a)
		if p.n.nothing(l.After - l.Before) {
			return p.n.made(l.Before)
		}
		by := l.After - l.Before
		return p.n.length(l.Before) + " → " + p.n.made(l.After) + " (" + number.Signed(by, p.n.length(by)) + ")"
	}}
}

func hasFace(a *engine.ArmSide) bool     { return a.Face != nil }
func hasDragLink(a *engine.ArmSide) bool { return a.DragLink != nil }
func hasTurns(a *engine.ArmSide) bool    { return a.Turns.Valid() }
func hasThread(a *engine.ArmSide) bool   { return a.Thread.Valid() }

// Groups of the table.
const (
	studGroup = "On the stud"
	faceGroup = "On the arm's face"
	carGroup  = "In car axes"
	rodGroup  = "Lengths"
)

var armRows = []armRow{
	{studGroup, "along the stud", nil, func(p *page, a *engine.ArmSide) string { return p.n.moved(a.AlongStud, "up", "down") }},
	{studGroup, "square to the stud", nil, func(p *page, a *engine.ArmSide) string { return p.n.made(a.AcrossStud) }},
	faceRow("square to the face", 0),
	faceRow("along the line of its bolts", 1),
	faceRow("across that line, in the face", 2),
	carRow("forward or rearward", 0),
	carRow("outboard or inboard", 1),
	carRow("up or down", 2),
	lengthRow(rodGroup, "steering arm", nil, func(a *engine.ArmSide) engine.Lengths { return a.Arm }),
	lengthRow(rodGroup, "tie rod, ball to ball", nil, func(a *engine.ArmSide) engine.Lengths { return a.TieRod }),
	lengthRow(rodGroup, "drag link, ball to ball", hasDragLink, func(a *engine.ArmSide) engine.Lengths { return *a.DragLink }),
	{rodGroup, "turns of the adjuster", hasTurns, turns},
	{rodGroup, "thread then engaged", hasThread, thread},
}

// faceRow is a line for the displacement along an axis of the face, with the word for
// where that axis points most.
func faceRow(label string, axis int) armRow {
	return armRow{faceGroup, label, hasFace, func(p *page, a *engine.ArmSide) string {
		words := directionWords[steepest(a.Face.Axes[axis])]
		by := a.Face.By[axis]
		if a.Face.Axes[axis][steepest(a.Face.Axes[axis])] < 0 {
			by = -by
		}
		return p.n.moved(by, words[0], words[1])
	}}
}

// directionWords are what a step along each car axis is called, forward and back.
var directionWords = [3][2]string{{"forward", "rearward"}, {"outboard", "inboard"}, {"up", "down"}}

// steepest returns the axis along which a direction goes most.
func steepest(v [3]float64) int {
	most := 0
	for i := range v {
		if math.Abs(v[i]) > math.Abs(v[most]) {
			most = i
		}
	}
	return most
}

func turns(p *page, a *engine.ArmSide) string {
	text := number.Decimal(math.Abs(float64(a.Turns)), 2)
	switch {
	case text == number.Decimal(0, 2):
		return text
	case a.Turns < 0:
		return text + " shorter"
	}
	return text + " longer"
}

// thread writes what is engaged, and the least that the maker allows.
func thread(p *page, a *engine.ArmSide) string {
	text := p.n.length(float64(a.Thread))
	least := p.Study.TieRod.MinEngagement
	switch {
	case least == 0:
		return text
	case float64(a.Thread) < least:
		return text + ", less than the " + p.n.length(least) + " needed"
	}
	return text + ", at least " + p.n.length(least) + " needed"
}

func (p *page) armTable() {
	l, r := &p.Arm.Sides[0], &p.Arm.Sides[1]
	alike := p.sameArm(l, r)
	p.open("table", "dims")
	p.open("thead", "")
	if alike {
		p.headings("", "From the original hole, "+p.n.LengthUnit(), "Each side")
	} else {
		p.headings("", "From the original hole, "+p.n.LengthUnit(), "Left", "Right")
	}
	p.close("thead")
	p.open("tbody", "")
	group := ""
	for _, row := range armRows {
		if row.cell(p, l)+row.cell(p, r) == "" || row.group != rodGroup && !p.moves(l) && !p.moves(r) {
			continue
		}
		p.open("tr", "")
		p.element("td", "group", firstOf(&group, row.group))
		p.element("th", "", row.label)
		p.element("td", "", row.cell(p, l))
		if !alike {
			p.element("td", "", row.cell(p, r))
		}
		p.close("tr")
	}
	p.close("tbody")
	p.close("table")
}

// firstOf returns text where it differs from what it was before, else nothing.
func firstOf(before *string, text string) string {
	if *before == text {
		return ""
	}
	*before = text
	return text
}

// headings writes a row of column headings.
func (p *page) headings(texts ...string) {
	p.open("tr", "")
	for _, text := range texts {
		p.element("th", "", text)
	}
	p.close("tr")
}
