package main

import (
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
	}
	r.line("")
	for _, words := range engine.LoadsWords {
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
