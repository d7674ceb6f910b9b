package main

import (
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// mechanical is a unit of forces, moments or stresses, and the one that stands beside
// it where lengths are shown in inches.
type mechanical struct {
	unit, beside       string
	by                 float64 // of the one in the other
	decimals, besideBy int
}

// A pound-force is 4.4482216152605 N by definition, an inch 25.4 mm.
const newtons = 4.4482216152605

var (
	force  = mechanical{"N", "lbf", newtons, 1, 1}
	moment = mechanical{"N m", "lbf ft", newtons * 12 * 0.0254, 2, 2}
	stress = mechanical{"MPa", "psi", newtons / (25.4 * 25.4), 1, 0}
)

// title returns the unit, with the other in parentheses where inches are shown.
func (m mechanical) title(r *report) string {
	if r.Units != study.Inch {
		return m.unit
	}
	return m.unit + " (" + m.beside + ")"
}

func (m mechanical) number(r *report, x engine.Number) string {
	text := fixed(float64(x), m.decimals)
	if r.Units != study.Inch || !x.Valid() {
		return text
	}
	return text + " (" + fixed(float64(x)/m.by, m.besideBy) + ")"
}

// showLoads prints a table for each load case, so that a candidate stands under the
// base car.
func showLoads(r *report, l *engine.LoadsResult) {
	for _, c := range r.study.Loads {
		r.heading("%s%s", oneLine(c.Name), loadedAt(r, &c))
		t := loadsTable(r, l, c.Name)
		r.table(t)
	}
	r.line("")
	r.sentence("Tie rod: positive is pulled apart, negative pushed together. Links without weight, joints without friction, the gear held; nothing is added to the loads stated.")
	r.sentence("The contact is the lowest point of the wheel's plane at the tyre's radius; scrub radius and trail of other figures are taken where that plane meets the ground, the radius below the wheel centre.")
	r.sentence("Loads and ratios, and no verdict: what a part bears is for strength work, and for a licensed engineer to judge.")
}

// loadedAt says where a case has the wheels.
func loadedAt(r *report, c *study.LoadCase) string {
	text := ""
	if c.Travel != 0 {
		text += ", travel " + r.travel(c.Travel) + " " + r.LengthUnit()
	}
	if c.Steer != 0 {
		at := r.travel(c.Steer) + " " + r.LengthUnit()
		if s := r.study.Steering; s != nil && s.Type == study.CentreLink {
			at = fixed(c.Steer, 2) + " deg"
		}
		text += ", steered " + at
	}
	return text
}

// loadsTable returns the forces of one case; columns that no row fills are left out.
func loadsTable(r *report, l *engine.LoadsResult, name string) *table {
	columns := loadColumns(l)
	t := &table{left: map[int]bool{1: true}, fold: fold{repeat: 2, group: 1}}
	heads, units := []string{"car", "side"}, []string{"", ""}
	for _, c := range columns {
		heads = append(heads, c.title)
		if c.unit.unit == "" {
			units = append(units, "")
		} else {
			units = append(units, c.unit.title(r))
		}
	}
	t.add(heads...)
	t.add(units...)
	for i := range l.Loads {
		one := &l.Loads[i]
		if one.Case != name {
			continue
		}
		row := []string{oneLine(one.Candidate), one.Side}
		for _, c := range columns {
			switch x := c.value(one); {
			case x == nil:
				row = append(row, "-")
			case c.unit.unit == "":
				row = append(row, fixed(float64(*x), 3))
			default:
				row = append(row, c.unit.number(r, *x))
			}
		}
		t.add(row...)
	}
	return t
}

// loadColumn is a column of the table; its value is nil where there is none.
type loadColumn struct {
	title string
	unit  mechanical
	value func(*engine.Load) *engine.Number
}

// loadColumns returns the columns that an answer fills.
func loadColumns(l *engine.LoadsResult) []loadColumn {
	arm := func(of func(*engine.ArmLoad) *engine.Number) func(*engine.Load) *engine.Number {
		return func(l *engine.Load) *engine.Number {
			if l.Arm == nil {
				return nil
			}
			return of(l.Arm)
		}
	}
	all := []loadColumn{
		{"tie rod", force, func(l *engine.Load) *engine.Number { return &l.TieRod }},
		{"of the base car's", mechanical{}, func(l *engine.Load) *engine.Number { return l.Ratio }},
		{"drag link", force, func(l *engine.Load) *engine.Number { return l.DragLink }},
		{"spring", force, func(l *engine.Load) *engine.Number { return &l.Spring }},
		{"off the face", force, arm(func(a *engine.ArmLoad) *engine.Number { return &a.Pull })},
		{"in the face", force, arm(func(a *engine.ArmLoad) *engine.Number { return &a.Shear })},
		{"twist", moment, arm(func(a *engine.ArmLoad) *engine.Number { return &a.Twist })},
		{"bend", moment, arm(func(a *engine.ArmLoad) *engine.Number { return &a.Bend })},
	}
	bolts := 0
	for i := range l.Loads {
		bolts = max(bolts, len(l.Loads[i].Bolts))
	}
	for i := range bolts {
		all = append(all, loadColumn{fmt.Sprintf("bolt %d", i+1), force, func(l *engine.Load) *engine.Number {
			if i >= len(l.Bolts) {
				return nil
			}
			return &l.Bolts[i].Shear
		}})
	}
	all = append(all, loadColumn{"stud", stress, func(l *engine.Load) *engine.Number {
		if l.Stud == nil {
			return nil
		}
		return &l.Stud.Bending
	}})
	var filled []loadColumn
	for _, c := range all {
		for i := range l.Loads {
			if c.value(&l.Loads[i]) != nil {
				filled = append(filled, c)
				break
			}
		}
	}
	return filled
}
