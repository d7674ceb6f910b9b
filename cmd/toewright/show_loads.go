package main

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// showLoads prints a table for each load case, so that a candidate stands under the
// base car.
func showLoads(r *report, l *engine.LoadsResult) {
	if l.Presets != nil {
		showPresets(r, l.Presets)
		return
	}
	cases := l.Cases
	if cases == nil {
		cases = r.study.Loads
	}
	for _, c := range cases {
		r.heading("%s%s", oneLine(c.Name), loadedAt(r, &c))
		if c.Source != "" {
			r.line("Source of the load: %s.", oneLine(c.Source))
		}
		t := loadsTable(r, l, c.Name)
		r.table(t)
		if t := givesTable(r, l, c.Name); t != nil {
			r.line("compliance steer by what gives, deg (estimate):")
			r.table(t)
		}
	}
	showAdded(r, l)
	r.line("")
	for _, words := range l.Words() {
		r.sentence(words)
	}
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

// loadsTable returns the forces of one case.
func loadsTable(r *report, l *engine.LoadsResult, name string) *table {
	figures := l.Figures()
	t := &table{left: map[int]bool{1: true}, fold: fold{repeat: 2, group: 1}}
	heads, units := []string{"car", "side"}, []string{"", ""}
	for i := range figures {
		heads, units = append(heads, figures[i].Label), append(units, figures[i].Unit(r.Style))
	}
	t.add(heads...)
	t.add(units...)
	for i := range l.Loads {
		one := &l.Loads[i]
		if one.Case != name {
			continue
		}
		row := []string{oneLine(one.Candidate), one.Side}
		for k := range figures {
			row = append(row, number.Plain(figures[k].Number(r.Style, one)))
		}
		t.add(row...)
	}
	return t
}

// showAdded says of each candidate by how much its largest twist at the face and bending of
// the stud exceed those of the base car, case by case.
func showAdded(r *report, l *engine.LoadsResult) {
	t := &table{left: map[int]bool{1: true}}
	t.add("", "case", "twist added", "to the base car's", "stud added", "to the base car's")
	for i := range l.Loads {
		one := &l.Loads[i]
		base := l.Largest(study.BaseName, one.Case)
		if one.Candidate == study.BaseName || one.Side != "left" || base.Candidate == "" {
			continue
		}
		most := l.Largest(one.Candidate, one.Case)
		row := []string{oneLine(one.Candidate), oneLine(one.Case), "-", "-", "-", "-"}
		if most.Arm != nil {
			row[2], row[3] = added(r, &number.Moment, most.Arm.Twist, base.Arm.Twist)
		}
		if most.Stud != nil {
			row[4], row[5] = added(r, &number.Stress, most.Stud.Bending, base.Stud.Bending)
		}
		t.add(row...)
	}
	if len(t.rows) > 1 {
		r.heading("what candidates add to the base car, the larger of both sides")
		r.table(t)
	}
}

// added writes by how much a figure is larger in size than the base car's, and by what
// ratio.
func added(r *report, q *number.Mechanical, now, base engine.Number) (more, times string) {
	x, was := math.Abs(float64(now)), math.Abs(float64(base))
	if was == 0 {
		return number.Plain(q.Text(r.Style, x)), "-"
	}
	return number.Plain(q.Text(r.Style, x-was)), number.Decimal(x/was, 2)
}

// givesTable returns what each member does to the toe in one case; nil where that is not
// estimated.
func givesTable(r *report, l *engine.LoadsResult, name string) *table {
	t := &table{left: map[int]bool{1: true}, fold: fold{repeat: 2, group: 1}}
	for i := range l.Loads {
		one := &l.Loads[i]
		if one.Case != name || one.Compliance == nil || one.Compliance.Toe == nil {
			continue
		}
		heads, row := []string{"car", "side"}, []string{oneLine(one.Candidate), one.Side}
		for _, g := range one.Compliance.By {
			heads, row = append(heads, g.Member), append(row, number.Plain(number.Turn.Number(r.Style, float64(g.Toe))))
		}
		if t.rows == nil {
			t.add(heads...)
		}
		t.add(row...)
	}
	if t.rows == nil {
		return nil
	}
	return t
}

// showPresets lists the presets with their formulas, the numbers that they start from and
// their sources.
func showPresets(r *report, list []engine.LoadPreset) {
	for _, p := range list {
		r.heading("%s: %s", p.Key, p.Name)
		r.line("Load: %s.", p.Formula)
		for _, f := range p.Factors {
			r.line("%s: %g %s", f.Name, f.Value, f.Unit)
		}
		r.line("Source: %s.", p.Source)
		if p.Lacks != "" {
			r.line("Not to be had: %s.", p.Lacks)
		}
	}
	r.line("")
	r.sentence("W is vehicle.wheelLoad, R the tyre's radius. Take them as a start: what a car meets is for its maker to say.")
}

// peakHeads are the heads of columns of the largest loads, and peakCells what stands in n
// of them.
func peakHeads(r *report, list []engine.LoadPeak) (out []string) {
	for i := range list {
		out = append(out, list[i].Short()+" "+list[i].Unit(r.Style))
	}
	return out
}

func peakCells(r *report, list []engine.LoadPeak, n int) (out []string) {
	for i := range list {
		out = append(out, number.Plain(list[i].Number(r.Style)))
	}
	for len(out) < n {
		out = append(out, "-")
	}
	return out[:n]
}

// showPeaks prints the largest loads of the car as drawn and how they spread.
func showPeaks(r *report, list []engine.LoadPeak) {
	if len(list) == 0 {
		return
	}
	r.heading("largest loads of the car as drawn, and what the tolerances leave in them")
	out := &table{left: map[int]bool{0: true, 4: true}}
	out.add("", "as drawn", "linear sd", "", "case")
	for i := range list {
		p := &list[i]
		out.add(p.Label(), number.Plain(p.Number(r.Style)), number.Plain(p.Spread(r.Style)), p.Unit(r.Style), oneLine(p.Where()))
	}
	r.table(out)
}
