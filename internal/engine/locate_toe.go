package engine

import (
	"context"
	"fmt"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// addToe sets what the located car's toe does at the ends of the window, and which
// measure would settle it best.
func (l *locator) addToe(ctx context.Context, most int) error {
	located, err := ApplyLocation(l.doc, l.out)
	if err != nil {
		return err
	}
	sides := []study.Side{study.Left, study.Right}
	if l.alike() {
		sides = sides[:1]
	}
	s, err := newSweeper(located, located.Window(), "")
	if err != nil && located.ReadyToSweep() != nil {
		return err // the window itself is none
	}
	var ends []*optimize.ToeEnds
	for _, side := range sides {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err != nil {
			l.noToe(side, err)
			continue
		}
		e, err := l.toe(s, side)
		if err != nil {
			l.noToe(side, err)
			continue
		}
		ends = append(ends, e)
	}
	if len(ends) > 0 {
		l.addNext(ends, most)
	}
	return nil
}

// noToe says why a side has no toe.
func (l *locator) noToe(side study.Side, err error) {
	end := ToeEnd{none, none}
	l.out.Toe[string(side)] = LocatedToe{end, end, explain(err, "").Error()}
}

// toe sets the toe of a side of the car as located.
func (l *locator) toe(s *sweeper, side study.Side) (*optimize.ToeEnds, error) {
	car := *l.car
	car.Base, car.Values = s.base, make([]float64, len(l.car.Values)) // it stands in its file now
	w := s.window
	j := optimize.Judge{Sides: selected(side)}
	for _, t := range []float64{-w.Droop, 0, w.Bump} {
		if t = l.doc.Units.Millimetres(t); len(j.Travels) == 0 || t > j.Travels[len(j.Travels)-1] {
			j.Travels = append(j.Travels, t)
		}
	}
	e, err := car.ToeEnds(&j)
	if err != nil {
		return nil, err
	}
	at := func(i int) ToeEnd { return ToeEnd{degrees(float64(e.Change[i])), degrees(float64(e.SD[i]))} }
	var out LocatedToe
	if w.Droop > 0 {
		out.Droop = at(0)
	}
	if w.Bump > 0 {
		out.Bump = at(len(e.SD) - 1)
	}
	l.out.Toe[string(side)] = out
	return e, nil
}

// addNext lists the measures that would settle the toe best.
func (l *locator) addNext(ends []*optimize.ToeEnds, most int) {
	names, offered := l.offer()
	for _, n := range l.car.NextTapes(offered, ends) {
		if len(l.out.Next) == most {
			return
		}
		one := names[n.Measure]
		one.ToeSD = solver.Angle(n.SD).Degrees()
		one.Words = fmt.Sprintf("measure %s: toe at the ends of the window would then be known to %s", one.Words, l.sayToe(one.ToeSD))
		l.out.Next = append(l.out.Next, one)
	}
}

// offer lists the measures that could be taken and have not been: from each mark to each
// hardpoint, between the hardpoints of a side, and each coordinate that a level or a plumb
// line gives.
func (l *locator) offer() (names []NextTape, offered *optimize.Taped) {
	offered = &optimize.Taped{Marks: l.taped.Marks}
	taken := map[[3]string]bool{}
	sds := map[string]float64{}
	for i := range l.all {
		m := &l.all[i]
		taken[[3]string{m.List, m.From, m.To}], taken[[3]string{m.List, m.To, m.From}] = true, true
		sds[m.List] = l.doc.Units.Millimetres(m.SD)
	}
	add := func(list, kind string, axis int, from, to string, m optimize.TapeMeasure, words string) {
		if taken[[3]string{list, from, to}] {
			return
		}
		m.Axis, m.SD = axis, study.UsualTapeSD
		if sd, ok := sds[list]; ok {
			m.SD = sd // as its like was measured
		}
		offered.Measures = append(offered.Measures, m)
		names = append(names, NextTape{From: from, Of: to, Kind: kind, Words: words})
	}
	for i := range l.points {
		p := &l.points[i]
		to := tapePoint(l.doc, p.PlacedPoint)
		for mark, name := range l.marks {
			add("lengths", "length", -1, name, p.label, optimize.TapeMeasure{From: optimize.TapePoint{Mark: mark}, To: to}, "the length from mark "+name+" to "+p.label)
		}
		for k := range l.points[:i] {
			if q := &l.points[k]; q.Side == p.Side {
				add("lengths", "length", -1, q.label, p.label, optimize.TapeMeasure{From: tapePoint(l.doc, q.PlacedPoint), To: to}, "the length from "+q.label+" to "+p.label)
			}
		}
		add("heights", "height", 2, "", p.label, optimize.TapeMeasure{To: to}, "the height of "+p.label+" over the ground")
		add("sides", "side", 1, "", p.label, optimize.TapeMeasure{To: to}, "the distance of "+p.label+" from the centreline")
		add("stations", "station", 0, "", p.label, optimize.TapeMeasure{To: to}, "the station of "+p.label+" along the centreline")
	}
	return names, offered
}
