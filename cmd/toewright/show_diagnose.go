package main

import (
	"slices"

	"toewright/internal/engine"
)

// showDiagnosis prints the sentences of each car, once where its sides are alike
// but for their name.
func showDiagnosis(r *report, d *engine.DiagnoseResult) {
	r.line("%s", windowLine(r, d.Window))
	for i := 0; i < len(d.Cars); i++ {
		c := &d.Cars[i]
		side := c.Side + " side"
		if i+1 < len(d.Cars) && diagnosedAlike(c, &d.Cars[i+1]) {
			side = "left side; the right one is alike"
			i++
		}
		r.heading("%s, %s", oneLine(c.Candidate), side)
		for _, line := range c.Words {
			if line != r.Basis() { // it stands at the head
				r.sentence(line)
			}
		}
	}
}

// diagnosedAlike reports whether two diagnoses are of the sides of one car and
// come to the same.
func diagnosedAlike(a, b *engine.Diagnosed) bool {
	same := func(x, y engine.Number) bool { return x-y <= sameOnPaper && y-x <= sameOnPaper }
	return a.Candidate == b.Candidate && a.Side != b.Side && same(a.RMS, b.RMS) &&
		slices.EqualFunc(a.Remedies, b.Remedies, func(p, q engine.Remedy) bool { return same(p.RMS, q.RMS) })
}
