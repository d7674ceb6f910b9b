package engine

import (
	"fmt"
	"math"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
)

// LoadFigure is a figure of a [Load], for tables and charts.
type LoadFigure struct {
	Label    string
	Quantity *number.Mechanical // nil of the ratio, which has no unit
	// Deciding figures are those by which arms and stacks are compared: there may be room
	// for no more. Part figures are what the arm and its stud are loaded by.
	Deciding, Part bool
	// Of returns the figure, nil where the study states too little for it.
	Of func(*Load) *Number
}

// Figures returns the figures that an answer has, in the order in which tables show
// them: no column stays empty.
func (r *LoadsResult) Figures() []LoadFigure {
	bolts := 0
	for i := range r.Loads {
		bolts = max(bolts, len(r.Loads[i].Bolts))
	}
	var out []LoadFigure
	for _, f := range loadFigures(bolts) {
		for i := range r.Loads {
			if f.Of(&r.Loads[i]) != nil {
				out = append(out, f)
				break
			}
		}
	}
	return out
}

// loadFigures returns all figures of arms with so many bolts.
func loadFigures(bolts int) []LoadFigure {
	arm := func(of func(*ArmLoad) *Number) func(*Load) *Number {
		return func(l *Load) *Number {
			if l.Arm == nil {
				return nil
			}
			return of(l.Arm)
		}
	}
	force, moment := &number.Force, &number.Moment
	list := []LoadFigure{
		{"tie rod", force, true, true, func(l *Load) *Number { return &l.TieRod }},
		{"to the base car's", nil, true, true, func(l *Load) *Number { return l.Ratio }},
		{"drag link", force, true, true, func(l *Load) *Number { return l.DragLink }},
		{"spring", force, false, false, func(l *Load) *Number { return &l.Spring }},
		{"off the face", force, false, true, arm(func(a *ArmLoad) *Number { return &a.Pull })},
		{"in the face", force, false, true, arm(func(a *ArmLoad) *Number { return &a.Shear })},
		{"twist", moment, true, true, arm(func(a *ArmLoad) *Number { return &a.Twist })},
		{"bend", moment, true, true, arm(func(a *ArmLoad) *Number { return &a.Bend })},
	}
	list = append(list, LoadFigure{"compliance steer", &number.Turn, true, false, func(l *Load) *Number {
		if l.Compliance == nil {
			return nil
		}
		return l.Compliance.Toe
	}})
	for i := range bolts {
		list = append(list, LoadFigure{fmt.Sprintf("bolt %d", i+1), force, false, false, func(l *Load) *Number {
			if i >= len(l.Bolts) {
				return nil
			}
			return &l.Bolts[i].Shear
		}})
	}
	return append(list, LoadFigure{"stud", &number.Stress, true, true, func(l *Load) *Number {
		if l.Stud == nil {
			return nil
		}
		return &l.Stud.Bending
	}})
}

// Unit returns the unit of the figure as s shows it, empty of the ratio.
func (f *LoadFigure) Unit(s number.Style) string {
	if f.Quantity == nil {
		return ""
	}
	return f.Quantity.Unit(s)
}

// Number writes the figure of l as s shows it; a dash where there is none.
func (f *LoadFigure) Number(s number.Style, l *Load) string {
	x := none
	if v := f.Of(l); v != nil {
		x = *v
	}
	return f.Text(s, float64(x))
}

// Text writes a value of the figure, or a difference of two, as s shows it.
func (f *LoadFigure) Text(s number.Style, x float64) string {
	if f.Quantity == nil {
		return number.Decimal(x, ratioDecimals)
	}
	return f.Quantity.Number(s, x)
}

// ratioDecimals are those of a ratio of forces: a thousandth is less than any load is
// known to.
const ratioDecimals = 3

// Words say how the figures are meant, wherever they are read; of toe under load that is
// left out, why.
func (r *LoadsResult) Words() []string {
	if len(r.Loads) == 0 || r.Loads[0].Compliance == nil {
		return loadsWords
	}
	text := "Compliance steer is an estimate: the change of toe, toe-in positive, as pivots, links and gear give to first order by the stiffness stated, at the travel of the case."
	if names := r.Loads[0].Compliance.Missing; len(names) > 0 {
		text = "Compliance steer is left out, without a stiffness of " + strings.Join(names, ", ") + ": " + study.StiffnessNeeded + "."
	}
	return append([]string{text}, loadsWords...)
}

// LoadsSigns say how the figures are found, and LoadsVerdict that they are none.
const (
	LoadsSigns   = "Tie rod: positive is pulled apart, negative pushed together. Links weigh nothing, joints have no friction, the gear is held; nothing is added to the loads stated."
	LoadsVerdict = "Loads and ratios, and no verdict: what a part bears is for strength work, and for a licensed engineer to judge."
)

var loadsWords = []string{
	LoadsSigns,
	"The contact is the lowest point of the wheel's plane at the tyre's radius; scrub radius and trail are taken where that plane meets the ground.",
	LoadsVerdict,
}

// Largest returns the largest twist and bending of the stud of a car in a case, over both
// sides; without a name where it has no face and no stud, or is not in the answer.
func (r *LoadsResult) Largest(car, name string) (most Load) {
	for i := range r.Loads {
		l := &r.Loads[i]
		if l.Candidate != car || l.Case != name {
			continue
		}
		if l.Arm != nil && (most.Arm == nil || math.Abs(float64(l.Arm.Twist)) > math.Abs(float64(most.Arm.Twist))) {
			most.Candidate, most.Arm = car, l.Arm
		}
		if l.Stud != nil && (most.Stud == nil || l.Stud.Bending > most.Stud.Bending) {
			most.Candidate, most.Stud = car, l.Stud
		}
	}
	return most
}
