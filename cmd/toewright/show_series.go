package main

import (
	"fmt"

	"toewright/internal/engine"
)

// mostCommon is how many dimensions are listed that cars have in common.
const mostCommon = 8

// showSeries prints what the cars come to, each of them, and what they have in common.
func showSeries(r *report, s *engine.SeriesResult) {
	r.line("%s; %s of toe change less target of %s, worse wheel, as drawn %s", windowLine(r, s.Window), s.Figure, oneLine(s.Candidate), limitText(r, float64(s.Predicted)))
	for _, line := range s.Words {
		r.sentence(line)
	}
	r.heading("cars as measured, in %s; the band holds 90 %%", r.ToeMark())
	t := &table{left: map[int]bool{1: true, 6: true, 7: true}}
	t.add("", "", "readings", s.Figure, "from", "to", "verdict", "furthest off the drawing")
	for i := range s.Cars {
		c := &s.Cars[i]
		off := ""
		if c.Off != nil {
			off = fmt.Sprintf("%s, %s at %s", r.toe(c.Off.Change), c.Off.Side, r.travel(c.Off.Travel))
		}
		t.add(oneLine(c.Car), oneLine(c.Date), fmt.Sprint(c.Readings), r.toe(float64(c.Figure.Value)), r.toe(float64(c.Figure.Low)), r.toe(float64(c.Figure.High)), c.Said(), off)
	}
	r.table(t)
	for i := range s.Cars {
		if c := &s.Cars[i]; c.Problem != "" {
			r.sentence(c.Car + ": " + c.Problem)
		}
	}
	common := s.InCommon(mostCommon)
	if len(common) == 0 {
		return
	}
	r.heading("what all cars are off alike, changes from the file; alone: were it no other")
	t = &table{left: map[int]bool{5: true}}
	t.add("", "alone", "explains %", "together", "sd", "")
	for i := range common {
		c := &common[i]
		alone, unit := r.parameter(c.Parameter, c.Alone)
		value, _ := r.parameter(c.Parameter, c.Value)
		sd, _ := r.parameter(c.Parameter, c.SD)
		t.add(c.Parameter, alone, percent(engine.Number(c.Share)), value, sd, unit)
	}
	r.table(t)
}
