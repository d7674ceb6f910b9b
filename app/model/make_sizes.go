package model

import (
	"strconv"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// Size is a length of a part as it was, as it comes out, and as it can be made.
type Size struct {
	Label string
	Was   string
	Exact string
	Make  string // on the shop's step; empty where nothing is made by it
	Off   string // what is made less the exact one
}

// ShopStep is a step that a shop works to.
type ShopStep struct {
	MM   float64 // 0 for the last decimal that is shown
	Text string
}

// ShopSteps lists the steps to choose from, the usual one first. Common practice.
func (d *Desk) ShopSteps() []ShopStep {
	if NumbersOf(d.Session.Document()).Units == study.Inch {
		return []ShopStep{{0, "0.001 in"}, {25.4 / 64, "1/64 in"}, {25.4 / 32, "1/32 in"}, {25.4 / 16, "1/16 in"}}
	}
	return []ShopStep{{0, "0.01 mm"}, {0.1, "0.1 mm"}, {0.25, "0.25 mm"}, {0.5, "0.5 mm"}, {1, "1 mm"}}
}

// Sizes lists the lengths of both arms, one line for both where they are alike: those of the
// drawing, exact and on the shop's step, and those that are to be set or checked.
func (d *Desk) Sizes(r *engine.ArmResult) (list []Size) {
	doc := d.Session.Document()
	n, mm := NumbersOf(doc), doc.Units.Millimetres
	write := func(x float64) string { return n.LengthDecimal(mm(x)) }
	l, right := &r.Sides[0], &r.Sides[1]
	alike := engine.Alike(l, right, write)
	each := func(of func(a *engine.ArmSide) Size) {
		one, other := of(l), of(right)
		if alike && one == other {
			list = append(list, one)
			return
		}
		one.Label, other.Label = one.Label+", left", other.Label+", right"
		list = append(list, one, other)
	}
	for i := range l.Part.Sizes {
		each(func(a *engine.ArmSide) Size {
			z := &a.Part.Sizes[i]
			by := z.Sign()
			return Size{a.Part.Words(a.Side, i), write(by * z.Was), n.LengthFine(mm(by * z.Exact)), n.LengthNumber(mm(by * z.Make)), number.Signed(by*z.Off(), n.LengthFine(mm(by*z.Off())))}
		})
	}
	each(func(a *engine.ArmSide) Size {
		return Size{Label: "along the stud, upward", Was: write(0), Exact: write(a.AlongStud)}
	})
	each(func(a *engine.ArmSide) Size {
		return Size{Label: "arm, level, axis to ball", Was: write(a.Arm.Before), Exact: write(a.Arm.After)}
	})
	each(func(a *engine.ArmSide) Size {
		return Size{Label: "tie rod, ball to ball", Was: write(a.TieRod.Before), Exact: write(a.TieRod.After)}
	})
	if l.Turns.Valid() {
		each(func(a *engine.ArmSide) Size {
			return Size{Label: "turns of the adjuster, longer positive", Exact: number.Decimal(float64(a.Turns), 2)}
		})
	}
	return list
}

// RoundingCost says what the shop's step costs in toe, and within what zones the ball may lie.
func (d *Desk) RoundingCost(r *engine.ArmResult) string {
	n := NumbersOf(d.Session.Document())
	text := "Largest toe change, " + n.ToeUnit() + ", exact and as made:"
	for i := range r.Sides {
		a := &r.Sides[i]
		text += " " + a.Side + " " + n.Toe(float64(a.Peak)) + ", " + n.Toe(float64(a.PeakMade)) + ";"
	}
	text = strings.TrimSuffix(text, ";") + "."
	if z := r.Sides[0].Part.Zones; z[0].Width > 0 || z[1].Width > 0 {
		text += " Zone of the ball: Ø" + n.LengthDecimal(r.Units.Millimetres(z[0].Width)) + " across the stud, " + n.LengthDecimal(r.Units.Millimetres(z[1].Width)) + " along it, as the series assumes."
	}
	return text
}

// StepText is the value of a menu for a step.
func StepText(mm float64) string { return strconv.FormatFloat(mm, 'g', -1, 64) }
