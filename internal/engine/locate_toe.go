package engine

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// addToe sets what the located car's toe does at the ends of the window, and which
// measure would settle it best.
func (l *locator) addToe(ctx context.Context, most int, curve bool) error {
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
		e, err := l.toe(s, side, curve)
		if err != nil {
			l.noToe(side, err)
			continue
		}
		ends = append(ends, e)
	}
	if len(ends) > 0 {
		l.addNext(ends, most)
	}
	if curve {
		l.out.Expected = l.expected()
	}
	return nil
}

// expected returns what each measure should read, in file units.
func (l *locator) expected() []float64 {
	out := l.car.TapeExpected(l.taped)
	for i := range out {
		out[i] = l.doc.Units.FromMillimetres(out[i])
	}
	return out
}

// noToe says why a side has no toe.
func (l *locator) noToe(side study.Side, err error) {
	end := ToeEnd{none, none}
	l.out.Toe[string(side)] = LocatedToe{Bump: end, Droop: end, Problem: explain(err, "").Error()}
}

// toe sets the toe of a side of the car as located.
func (l *locator) toe(s *sweeper, side study.Side, curve bool) (*optimize.ToeEnds, error) {
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
	if l.spacer(&car, &j, e); curve {
		out.Curve = l.curve(&car, j, s)
	}
	l.out.Toe[string(side)] = out
	return e, nil
}

// spacerKeys are the balls that spacers go under.
var spacerKeys = []string{"tieRodOuterHeight", "dragLinkOuterHeight"}

// spacer sets what a spacer does to the toe of a side at the ends of the window, where that
// is less than on the side before, and whether the toe is known well enough beside it.
func (l *locator) spacer(car *optimize.FittedCar, j *optimize.Judge, e *optimize.ToeEnds) {
	for _, key := range spacerKeys {
		p, _, err := solver.FindParameter(l.design, key)
		if err != nil {
			continue
		}
		step := map[study.Units]float64{study.Inch: 1.0 / 16}[l.doc.Units]
		if step = cmp.Or(step, 1); l.doc.Advise != nil && l.doc.Advise.Step > 0 {
			step = l.doc.Advise.Step
		}
		own := *car
		ends, err := own.ToeEndsWith(j, []solver.Change{{Parameter: p, Value: l.doc.Units.Millimetres(step)}})
		if err != nil {
			return
		}
		does, narrow := 0.0, true
		for i := range ends.Change {
			by := math.Abs(float64(ends.Change[i] - e.Change[i]))
			does = max(does, by)
		}
		for i := range e.SD {
			narrow = narrow && bandHalf*float64(e.SD[i]) <= does/2
		}
		if s := l.out.Spacer; s != nil {
			narrow = narrow && s.Narrow
			does = min(does, solver.Deg(float64(s.Toe)).Radians())
		}
		l.out.Spacer = &TapedSpacer{Step: step, Toe: degrees(does), Narrow: narrow}
		return
	}
}

// bandHalf is half the width of a 90 % band, in standard deviations of a normal distribution.
const bandHalf = 1.6448536269514722

// curve returns the toe change over the window; none where the car does not make it.
func (l *locator) curve(car *optimize.FittedCar, j optimize.Judge, s *sweeper) (out []TapedToe) {
	j.Travels = s.grid.mm
	p, err := car.Predict(&j, nil)
	if err != nil {
		return nil
	}
	for i, t := range p.Travels {
		out = append(out, TapedToe{l.doc.Units.FromMillimetres(t), ToeEnd{degrees(float64(p.Change[i])), degrees(float64(p.SD[i]))}})
	}
	return out
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
	add := func(list, from, to string, m optimize.TapeMeasure, words string) {
		of := study.Measure{List: list, From: from, To: to}
		key := study.MeasureKey(list, from, to)
		if taken[[3]string{list, from, to}] || slices.Contains(l.doc.Measured.Unreachable, key) {
			return
		}
		m.Axis, m.SD = of.Axis(), study.UsualTapeSD
		if sd, ok := sds[list]; ok {
			m.SD = sd // as its like was measured
		}
		offered.Measures = append(offered.Measures, m)
		names = append(names, NextTape{From: from, Of: to, Kind: of.Kind(), Words: words, Key: key})
	}
	for i := range l.points {
		p := &l.points[i]
		to := tapePoint(l.doc, p.PlacedPoint)
		for mark, name := range l.marks {
			add("lengths", name, p.label, optimize.TapeMeasure{From: optimize.TapePoint{Mark: mark}, To: to}, "the length from mark "+name+" to "+p.label)
		}
		for k := range l.points[:i] {
			if q := &l.points[k]; q.Side == p.Side {
				add("lengths", q.label, p.label, optimize.TapeMeasure{From: tapePoint(l.doc, q.PlacedPoint), To: to}, "the length from "+q.label+" to "+p.label)
			}
		}
		add("heights", "", p.label, optimize.TapeMeasure{To: to}, "the height of "+p.label+" over the ground")
		add("sides", "", p.label, optimize.TapeMeasure{To: to}, "the distance of "+p.label+" from the centreline")
		add("stations", "", p.label, optimize.TapeMeasure{To: to}, "the station of "+p.label+" along the centreline")
	}
	return names, offered
}
