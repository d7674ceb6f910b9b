package model

import (
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// Proposal is the travel in file units that is to be read next.
type Proposal struct {
	Travel float64
	Own    bool // it follows what the reader did before, not the study's grid
}

// tied is by how much less two distances are alike, in file units.
const tied = 1e-6

// leastStride is the least spacing that is followed, mm: what is nearer was read twice.
const leastStride = 0.07

// spacing proposes travels of a run: those of the run before in their order, else on by the
// spacing of the last two, else those of the study's window.
type spacing struct {
	s         *Session
	run       Run
	rows      []RunRow  // what was read in the run
	follow    []float64 // travels of the run before, in the order in which they were read
	direction string
}

// NextTravel returns what is to be read next in a run of which rows were read, last of them
// at the travel last; ok is false where nothing is left. Follow is the order of an earlier
// run, nil for what the file has of one. A run that goes into bump or droop does not turn
// back.
func (s *Session) NextTravel(r Run, rows []RunRow, last *float64, follow []float64) (p Proposal, ok bool) {
	set := &s.doc.Readings[r.First()]
	if follow == nil {
		follow = s.travelsBefore(r)
	}
	sp := spacing{s, r, rows, inDirection(follow, set.Direction), set.Direction}
	if x, known, left := sp.followed(last); known {
		return Proposal{x, true}, left
	}
	switch {
	case last != nil:
		return sp.on(*last)
	case len(rows) > 1:
		return sp.resumed()
	}
	return sp.onGrid(nil, 1)
}

// resumed goes on with a run of which nobody knows in which order it was read: through what it
// left out, by the spacing of its lowest two, then beyond its end.
func (sp *spacing) resumed() (Proposal, bool) {
	low, high := sp.end(-1), sp.end(1)
	near, _ := sp.nearest(low)
	if stride := near - low; sp.s.doc.Units.Millimetres(stride) >= leastStride {
		for x, ok := low, true; ok && x < high; x, ok = sp.beyond(x, stride, 1) {
			if !sp.read(x) {
				return Proposal{x, true}, true
			}
		}
	}
	if sp.direction == "droop" {
		return sp.on(low)
	}
	return sp.on(high)
}

// inDirection returns the travels of a run as one of a direction goes through them.
func inDirection(travels []float64, direction string) []float64 {
	if direction == "" {
		return travels
	}
	list := slices.Sorted(slices.Values(travels))
	if direction == "droop" {
		slices.Reverse(list)
	}
	return list
}

// travelsBefore returns the travels of the nearest run before with readings of the user's
// own, from droop to bump; nil for none.
func (s *Session) travelsBefore(r Run) []float64 {
	runs := Runs(s.doc)
	at := slices.Index(runs, r)
	for i := at - 1; i >= 0; i-- {
		first := runs[i].First()
		if s.doc.Readings[first].TravelAs != s.doc.Readings[r.First()].TravelAs || s.doc.IsBorrowed(entryPath("readings", first)+".values") {
			continue
		}
		var list []float64
		for _, row := range runs[i].Rows(s.doc) {
			list = append(list, row.Travel)
		}
		if len(list) > 1 {
			return list
		}
	}
	return nil
}

// followed returns the next travel of the run before that was not read in this one; known is
// false where the run goes its own way, left where all were read.
func (sp *spacing) followed(last *float64) (x float64, known, left bool) {
	at := -1
	if last != nil {
		if at = slices.IndexFunc(sp.follow, func(f float64) bool { return sp.alike(f, *last) }); at < 0 {
			return 0, false, false
		}
	}
	for i := range sp.follow {
		if x := sp.follow[(at+1+i)%len(sp.follow)]; !sp.read(x) {
			return x, true, true
		}
	}
	return 0, len(sp.follow) > 0, false
}

// on goes on from the travel that was read last.
func (sp *spacing) on(last float64) (Proposal, bool) {
	near, ok := sp.nearest(last)
	stride := math.Abs(last - near)
	if !ok || sp.s.doc.Units.Millimetres(stride) < leastStride {
		return sp.onGrid(&last, 1)
	}
	way := 1.0
	if last < near {
		way = -1
	}
	for x := last; ; {
		if x, ok = sp.beyond(x, stride, way); !ok {
			break
		}
		if !sp.read(x) {
			return Proposal{x, true}, true
		}
	}
	if sp.direction != "" {
		return Proposal{}, false
	}
	end := sp.end(-way) // the other side of where the run began
	x, ok := sp.beyond(end, stride, -way)
	return Proposal{x, true}, ok
}

// beyond returns the travel a stride behind another, or a step of the study's grid where the
// stride is one; ok is false beyond the end of the window.
func (sp *spacing) beyond(from, stride, way float64) (x float64, ok bool) {
	grid := sp.grid()
	i := slices.IndexFunc(grid, func(g float64) bool { return sp.alike(g, from) })
	back, next := i-int(way), i+int(way)
	if i >= 0 && back >= 0 && back < len(grid) && sp.alike(grid[back], from-way*stride) {
		if next < 0 || next >= len(grid) {
			return 0, false
		}
		return grid[next], true
	}
	x = exact(from + way*stride)
	return x, sp.within(x)
}

// onGrid returns the first travel of the study's window that was not read, of those behind
// last; where there is none and the run may turn back, of those before it.
func (sp *spacing) onGrid(last *float64, way float64) (Proposal, bool) {
	grid := sp.grid()
	if sp.direction == "droop" {
		way = -1
	}
	for _, w := range []float64{way, -way} {
		list := slices.Clone(grid)
		if w < 0 {
			slices.Reverse(list)
		}
		for _, x := range list {
			if !sp.read(x) && (last == nil || w*(x-*last) > 0) {
				return Proposal{Travel: x}, true
			}
		}
		if sp.direction != "" {
			break
		}
	}
	return Proposal{}, false
}

// grid returns the travels of the study's window in file units; none where travel is read as
// the length of a damper, of which the window says nothing.
func (sp *spacing) grid() []float64 {
	w := sp.s.doc.Window()
	grid, err := solver.Grid(w.Bump, w.Droop, w.Step)
	if err != nil || sp.s.doc.Readings[sp.run.First()].TravelAs == "damper" {
		return nil
	}
	return grid
}

// nearest returns the travel read nearest to another, of two as near the lower.
func (sp *spacing) nearest(to float64) (x float64, ok bool) {
	for _, row := range sp.rows {
		if !sp.alike(row.Travel, to) && (!ok || math.Abs(row.Travel-to) < math.Abs(x-to)-tied) {
			x, ok = row.Travel, true
		}
	}
	return x, ok
}

// end returns the travel read furthest to a side.
func (sp *spacing) end(way float64) float64 {
	x := sp.rows[0].Travel
	for _, row := range sp.rows {
		if way*row.Travel > way*x {
			x = row.Travel
		}
	}
	return x
}

// read reports whether a travel was read, as it is shown.
func (sp *spacing) read(x float64) bool {
	return slices.ContainsFunc(sp.rows, func(row RunRow) bool { return sp.alike(row.Travel, x) })
}

// alike reports whether two travels are shown as one.
func (sp *spacing) alike(a, b float64) bool { return shownAlike(sp.s.doc, a, b) }

func shownAlike(d *study.Document, a, b float64) bool {
	n := NumbersOf(d)
	return n.LengthNumber(d.Units.Millimetres(a)) == n.LengthNumber(d.Units.Millimetres(b))
}

// roundingSlack is by how much a travel may lie beyond the window, mm: roundings of spacings in
// inches.
const roundingSlack = 0.01

// within reports whether a travel moves the wheel no further than the study's window, or than
// what was read in the run already, up or down.
func (sp *spacing) within(x float64) bool {
	w, mm := sp.s.doc.Window(), sp.s.doc.Units.Millimetres
	bump, droop := mm(w.Bump), mm(w.Droop)
	values := [][2]float64{{x, 0}}
	for _, row := range sp.rows {
		values = append(values, [2]float64{row.Travel, 0})
	}
	wheel := sp.s.wheelTravels(sp.run, values)
	for i := 1; i < len(wheel); i++ {
		bump, droop = max(bump, math.Abs(wheel[i])), max(droop, math.Abs(wheel[i]))
	}
	return len(wheel) > 0 && wheel[0] <= bump+roundingSlack && wheel[0] >= -droop-roundingSlack
}

// wheelTravels returns the wheel travels in mm of readings of a run; nil where they cannot be
// told.
func (s *Session) wheelTravels(r Run, values [][2]float64) []float64 {
	set := s.doc.Readings[r.First()]
	set.Values = values
	travels, err := s.cars.ReadTravels(s.doc, &set)
	if err != nil {
		return nil
	}
	return travels
}
