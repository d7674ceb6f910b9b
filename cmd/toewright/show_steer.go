package main

import (
	"toewright/internal/engine"
)

// showSteer prints a table for each car, from lock to lock.
func showSteer(r *report, s *engine.SteerResult) {
	for _, c := range s.Cars {
		r.heading("%s%s", oneLine(c.Candidate), circumstances(r, "both", engine.Attitude{Heave: s.Heave, Roll: s.Roll}))
		r.table(steerTable(r, s, &c))
		if l := c.Lock; l != nil {
			r.line("The steering locks before: %s stands in the way.", l.Link)
		}
	}
}

func steerTable(r *report, s *engine.SteerResult, c *engine.Steered) *table {
	t := &table{}
	length, input := string(r.shown), s.InputUnit
	asLength := input != "deg"
	if asLength {
		input = length
	}
	t.add("input", "left", "right", "toe-out on turn", "Ackermann", "turning circle", "ratio")
	t.add(input, "deg", "deg", "deg", "%", length, "")
	for _, p := range c.Points {
		at := fixed(p.Input, 2)
		if asLength {
			at = r.length(p.Input)
		}
		t.add(at, fixed(float64(p.Left), 3), fixed(float64(p.Right), 3), fixed(float64(p.ToeOut), 3),
			fixed(float64(p.Ackermann), 1), r.length(float64(p.TurningCircle)), fixed(float64(p.Ratio), 2))
	}
	return t
}
