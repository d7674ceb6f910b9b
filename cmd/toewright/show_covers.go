package main

import "toewright/internal/engine"

// showCovers prints a row for each parameter: the car's own value and the interval about it.
func showCovers(r *report, c *engine.CoversResult) {
	r.line("%s; %s of toe change less target of %s within %s", windowLine(r, c.Window), c.Figure, oneLine(c.Candidate), limitText(r, c.Limit))
	r.line("")
	t := &table{left: map[int]bool{5: true}, fold: fold{repeat: 2, group: 1}}
	t.add("", "", "own", "from", "to", "ends by")
	for i := range c.Covers {
		one := &c.Covers[i]
		own, unit := r.parameter(one.Parameter, float64(one.Own))
		low, _ := r.parameter(one.Parameter, float64(one.Low))
		high, _ := r.parameter(one.Parameter, float64(one.High))
		t.add(one.Parameter, unit, own, low, high, coverEnds(one))
	}
	r.table(t)
	r.line("")
	if n := len(c.Covers); n > 0 && c.Covers[0].Problem != "" {
		r.line("No interval: %s.", c.Covers[0].Problem)
	}
	r.sentence("The figure is the worse wheel's. A bound is where it was looked no further.")
}

// limitText writes a limit of toe with its unit.
func limitText(r *report, deg float64) string { return r.toe(deg) + " " + r.ToeMark() }

// coverEnds says what ends an interval below and above, and what is in the way of a lock.
func coverEnds(c *engine.Cover) string {
	if c.Problem != "" {
		return ""
	}
	end := func(by, link string) string {
		if link == "" {
			return by
		}
		return by + " (" + link + ")"
	}
	return end(c.LowEnd, c.LowLink) + "; " + end(c.HighEnd, c.HighLink)
}
