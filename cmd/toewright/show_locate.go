package main

import (
	"maps"
	"slices"

	"toewright/internal/engine"
)

// showLocate prints what a location comes to in sentences, then where everything is.
func showLocate(r *report, l *engine.LocateResult) {
	for _, line := range l.Words {
		r.sentence(line)
	}
	r.heading("hardpoints in %s: forward, left, up, each with its standard deviation", r.LengthUnit())
	t := &table{left: map[int]bool{7: true}}
	t.add("", "x", "sd", "y", "sd", "z", "sd", "")
	for _, name := range slices.Sorted(maps.Keys(l.Points)) {
		p := l.Points[name]
		note := ""
		if !p.Settled {
			note = "not settled"
		}
		t.add(append(locatedRow(r, name, &p.LocatedMark), note)...)
	}
	for _, name := range slices.Sorted(maps.Keys(l.Marks)) {
		m := l.Marks[name]
		t.add(append(locatedRow(r, "mark "+oneLine(name), &m), "")...)
	}
	r.table(t)
	if len(l.Next) > 0 {
		r.heading("what to measure next, the most useful first")
		for _, n := range l.Next {
			r.sentence(n.Words)
		}
	}
}

// locatedRow returns the cells of a place.
func locatedRow(r *report, name string, m *engine.LocatedMark) []string {
	row := []string{name}
	for axis := range m.Value {
		row = append(row, r.length(m.Value[axis]), r.length(m.SD[axis]))
	}
	return row
}
