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
	length, input := r.LengthUnit(), s.InputUnit
	asLength := input != "deg"
	if asLength {
		input = length
	}
	t.add("input", "left", "right", "toe-out on turn", "Ackermann", "turning circle", "ratio")
	t.add(input, "deg", "deg", "deg", "%", length, "")
	for _, p := range c.Points {
		at := r.ratio(p.Input)
		if asLength {
			at = r.travel(p.Input)
		}
		t.add(at, r.angle(float64(p.Left)), r.angle(float64(p.Right)), r.angle(float64(p.ToeOut)),
			r.percent(float64(p.Ackermann)), r.long(float64(p.TurningCircle)), r.ratio(float64(p.Ratio)))
	}
	return t
}
