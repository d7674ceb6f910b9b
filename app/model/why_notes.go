package model

import (
	"fmt"
	"math"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// tallStack is the height of a stack of spacers, mm, from which its stud is to be looked
// at: about the diameter of the studs themselves, 12 to 16 mm. It is a judgement and no rule
// of a maker.
const tallStack = 12.0

// notes say how a move is made, and what is to be looked at.
func (e *explainer) notes(moves []engine.WhyMove) []Remark {
	list := e.madeNotes(&moves[0])
	for i := range moves {
		if m := &moves[i]; strings.HasPrefix(m.Parameter, "tieRodOuterHeight") && e.worthSaying(m) {
			list = append(list, e.stud(m)...)
		}
	}
	return list
}

// madeNotes say which whole steps are tried, or why none are.
func (e *explainer) madeNotes(m *engine.WhyMove) []Remark {
	mm := e.doc.Units.Millimetres
	step := e.stepText()
	if m.Outside {
		bound := func(x engine.Number) string { return number.Signed(float64(x), e.n.LengthDecimal(mm(float64(x)))) }
		return []Remark{{fmt.Sprintf("No whole step of %s lies from %s to %s, where all keep %s: the exact place is tried.",
			step, bound(m.Low), bound(m.High), e.n.ToeNumber(e.limit)), true}}
	}
	if !isHeight(m.Parameter) {
		return nil
	}
	text := fmt.Sprintf("Tried in steps of %s: %s %s", step, e.length(m.Made), way(m.Parameter, m.Made))
	if math.Abs(float64(m.Total-m.Made)) > 0 {
		total := mm(float64(m.Total))
		text += ", " + number.Signed(total, e.n.Length(total)) + " in all"
	}
	return []Remark{{text + ".", false}}
}

// stepText names the step that parts are made in: of inches by its fraction, as spacers are
// sold.
func (e *explainer) stepText() string {
	if in := study.Inch.FromMillimetres(e.step); e.n.Units == study.Inch && math.Remainder(in, 1.0/64) == 0 {
		return number.Fraction(in, 64) + " in"
	}
	return e.n.Travel(e.step)
}

// stud warns of a tall stack: that it asks for a longer stud and bends it more, by how much
// where the study states the stud.
func (e *explainer) stud(m *engine.WhyMove) []Remark {
	stack := math.Abs(e.doc.Units.Millimetres(float64(m.Total)))
	if stack < tallStack {
		return nil
	}
	more := "more"
	if ball := e.doc.OuterBall(); ball != nil && ball.Stud != nil && ball.Stud.Height > 0 {
		h := e.doc.Units.Millimetres(ball.Stud.Height)
		more = number.Decimal((h+stack)/h, 1) + " times as much"
	}
	return []Remark{{fmt.Sprintf("A stack of %s bends its stud %s: check the stud's length, thread and bending, or make the arm so.", e.n.Travel(stack), more), true}}
}
