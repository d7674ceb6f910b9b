package model

import (
	"math"
	"strconv"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// Size is a dimension of a part as it comes out, and as it can be made.
type Size struct {
	Label     string
	Exact     string
	Make      string // on the shop's step
	Off       string // what is made less the exact one
	Tolerance string // that the study states; empty where it states none
}

// ShopStep is a step that a shop works to.
type ShopStep struct {
	MM   float64
	Text string
}

// ShopSteps lists the steps to choose from, the usual one first. Common practice.
func (d *Desk) ShopSteps() []ShopStep {
	if NumbersOf(d.Session.Document()).Units == study.Inch {
		return []ShopStep{{25.4 / 64, "1/64 in"}, {25.4 / 32, "1/32 in"}, {25.4 / 16, "1/16 in"}, {0.0254, "0.001 in"}}
	}
	return []ShopStep{{0.1, "0.1 mm"}, {0.25, "0.25 mm"}, {0.5, "0.5 mm"}, {1, "1 mm"}}
}

// Sizes lists by how much the hole of one side's arm moves from the original one, exact and
// on a shop's step.
func (d *Desk) Sizes(r *engine.ArmResult, side int, step float64) (list []Size) {
	a, mm := &r.Sides[side], r.Units.Millimetres
	rows := []struct {
		label string
		exact float64
		keys  []string // of the parameters whose tolerance it is
	}{
		{"Hole, forward", mm(a.Car[0]), []string{"tieRodOuter.x"}},
		{"Hole, outboard", mm(a.Car[1]), []string{"tieRodOuter.y"}},
		{"Hole, up", mm(a.Car[2]), []string{"tieRodOuterHeight", "tieRodOuter.z"}},
		{"Hole, along the stud", mm(a.AlongStud), []string{"tieRodOuterHeight"}},
		{"Arm, axis to ball", mm(a.Arm.After), []string{"steeringArmLength"}},
	}
	n := NumbersOf(d.Session.Document())
	for _, r := range rows {
		made := math.Round(r.exact/step) * step
		off := made - r.exact
		list = append(list, Size{r.label, n.LengthDecimal(r.exact), n.LengthNumber(made), number.Signed(off, n.LengthDecimal(off)), d.toleranceOf(r.keys)})
	}
	return list
}

// toleranceOf writes the tolerance that the study states of the first of some parameters.
func (d *Desk) toleranceOf(keys []string) string {
	doc := d.Session.Document()
	n := NumbersOf(doc)
	for _, key := range keys {
		for _, t := range doc.Tolerances {
			switch {
			case t.Parameter != key:
			case t.SD > 0:
				return "sd " + n.LengthDecimal(doc.Units.Millimetres(t.SD))
			default:
				return "±" + n.LengthDecimal(doc.Units.Millimetres(t.PlusMinus))
			}
		}
	}
	return ""
}

// StepText is the value of a menu for a step.
func StepText(mm float64) string { return strconv.FormatFloat(mm, 'g', -1, 64) }
