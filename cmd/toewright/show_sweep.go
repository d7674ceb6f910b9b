package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/internal/engine"
)

// showSweep prints a table for each car, and one for each side where they differ.
func showSweep(r *report, s *engine.SweepResult) {
	for i := 0; i < len(s.Sweeps); i++ {
		side := s.Sweeps[i].Side + " side"
		if i+1 < len(s.Sweeps) && alike(&s.Sweeps[i], &s.Sweeps[i+1]) {
			side = "both sides"
			i++
		}
		showCarSweep(r, &s.Sweeps[i], side)
	}
}

// sameOnPaper is the largest difference, in degrees and lengths, that no table
// shows.
const sameOnPaper = 1e-6

// alike reports whether two sweeps are those of one car and print the same but for
// the side.
func alike(a, b *engine.CarSweep) bool {
	if a.Candidate != b.Candidate || a.Side == b.Side || len(a.Positions) != len(b.Positions) {
		return false
	}
	same := func(x, y float64) bool { return math.Abs(x-y) <= sameOnPaper }
	for i := range a.Positions {
		p, q := &a.Positions[i], &b.Positions[i]
		if !same(p.Toe, q.Toe) || !same(p.Camber, q.Camber) || !same(p.HalfTrackChange, q.HalfTrackChange) {
			return false
		}
	}
	return true
}

func showCarSweep(r *report, s *engine.CarSweep, side string) {
	r.heading("%s, %s%s", oneLine(s.Candidate), side, circumstances(r, s.Motion, engine.Attitude{Heave: s.Heave, Roll: s.Roll, Steer: s.Steer}))
	if s.TravelAt != "" {
		r.line("travel counts at the tyre's %s", s.TravelAt)
	}
	if len(s.Positions) == 0 {
		r.line("no position of the window is reached")
	} else {
		r.table(sweepTable(r, s))
		if s.Steer != 0 {
			r.line("Scrub radius and trail are along the car's axes, not the steered wheel's own as in ISO 8855.")
		}
	}
	if s.Reach != nil {
		r.line("%s", lock(r, s.Reach))
	}
}

func sweepTable(r *report, s *engine.CarSweep) *table {
	t := &table{}
	length := r.LengthUnit()
	t.add("travel", "toe", "toe change", "camber", "caster", "kingpin incl.", "half track", "scrub radius", "trail")
	t.add(length, r.ToeMark(), r.ToeMark(), "deg", "deg", "deg", length, length, length)
	home := toeAtRest(s)
	for _, p := range slices.Backward(s.Positions) {
		t.add(r.travel(p.Travel), r.toe(p.Toe), r.toe(p.Toe-home), r.angle(p.Camber),
			r.angle(float64(p.Caster)), r.angle(float64(p.KingpinInclination)), r.length(p.HalfTrackChange),
			r.length(float64(p.ScrubRadius)), r.length(float64(p.Trail)))
	}
	return t
}

// toeAtRest returns the toe at travel 0, NaN where that is not reached.
func toeAtRest(s *engine.CarSweep) float64 {
	for _, p := range s.Positions {
		if p.Travel == 0 {
			return p.Toe
		}
	}
	return math.NaN()
}

// circumstances says how and about what the wheels move, where that is not plain.
func circumstances(r *report, motion string, a engine.Attitude) string {
	var parts []string
	if words := motions[motion]; words != "" {
		parts = append(parts, words)
	}
	if a.Steer != 0 {
		parts = append(parts, "steer "+r.steer(a.Steer))
	}
	if a.Heave != 0 {
		parts = append(parts, fmt.Sprintf("heave %s %s", r.travel(a.Heave), r.LengthUnit()))
	}
	if a.Roll != 0 {
		parts = append(parts, fmt.Sprintf("roll %g deg", a.Roll))
	}
	if len(parts) == 0 {
		return ""
	}
	return ", " + strings.Join(parts, ", ")
}

// motions say which wheels move, of those that are not plain.
var motions = map[string]string{
	"left":  "left wheel moving alone",
	"right": "right wheel moving alone",
	"roll":  "left wheel up as the right one goes down",
}

// steer formats a steering input with its unit.
func (r *report) steer(x float64) string {
	if g := r.study.Steering; g != nil && g.Type == "centre-link" {
		return fmt.Sprintf("%g deg of the pitman arm", x)
	}
	return fmt.Sprintf("%s %s of the rack", r.travel(x), r.LengthUnit())
}

// lock says where a linkage ends.
func lock(r *report, reach *engine.Reach) string {
	var ends []string
	if reach.Bump != nil {
		ends = append(ends, fmt.Sprintf("%s %s of bump", r.travel(*reach.Bump), r.LengthUnit()))
	}
	if reach.Droop != nil {
		ends = append(ends, fmt.Sprintf("%s %s of droop", r.travel(*reach.Droop), r.LengthUnit()))
	}
	text := "The travel ends at " + strings.Join(ends, " and at ") + ": " + reach.Link + " stands in the way."
	if reach.Unsure {
		text += " No lock was found there, but the linkage could not be followed further."
	}
	return text
}
