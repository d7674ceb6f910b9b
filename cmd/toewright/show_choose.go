package main

import (
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
)

// showChoose prints the best combinations and the undominated ones.
func showChoose(r *report, c *engine.ChooseResult) {
	r.line("%s; ranked by the %s of the %s", windowLine(r, c.Window), c.Figure, sides[c.Side])
	limits := ""
	if r.study.Search != nil && len(r.study.Search.Limits) > 0 {
		limits = " Those listed hold all limits."
	}
	r.line("%s, of which %d go together and reach the window.%s", number.Count(c.Tried, "combination"), c.Built, limits)
	if c.Stopped {
		r.line("Stopped before all combinations were tried.")
	}
	for _, l := range c.Conflict {
		r.line("%s is broken by %s %% of them.", l.Name, percent(l.Share))
	}
	if len(c.Best) == 0 {
		return
	}
	r.heading("least toe change less target")
	r.table(choices(r, c.Best))
	r.heading("none is both cheaper and better than these")
	r.table(choices(r, c.Undominated))
}

func choices(r *report, list []engine.Choice) *table {
	t := &table{}
	heads, parts := []string{"rms " + r.ToeMark(), "largest " + r.ToeMark(), "price"}, len(list[0].Loads)+3
	t.left = map[int]bool{parts: true}
	t.add(append(append(heads, peakHeads(r, list[0].Loads)...), "parts")...)
	for _, k := range list {
		row := []string{r.toe(float64(k.RMS)), r.toe(float64(k.Peak)), fixed(k.Price, 2)}
		t.add(append(append(row, peakCells(r, k.Loads, len(list[0].Loads))...), partsLine(k.Parts))...)
	}
	return t
}

// partsLine names the parts of a combination.
func partsLine(parts []engine.ChosenPart) string {
	if len(parts) == 0 {
		return "as it stands"
	}
	var names []string
	for _, p := range parts {
		names = append(names, oneLine(p.Slot)+": "+oneLine(p.Name))
	}
	return strings.Join(names, "; ")
}
