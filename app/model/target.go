package model

import (
	"slices"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// wanted is the toe change that a study wants of both sides.
type wanted struct {
	points [2][][2]float64 // travel in file units, degrees; none where it is flat
	curves [2]optimize.Target
}

// wantedOf returns the target of a study, whichever way that is stated. It is flat where
// the curve of a car is wanted that cannot be moved.
func wantedOf(d *study.Document) (w wanted) {
	f := d.Search
	switch {
	case f == nil:
		return w
	case f.TargetOf != "" || f.TargetSlope != 0:
		if t, err := engine.Target(d); err == nil && t != nil {
			w.points = [2][][2]float64{t.Left, t.Right}
		}
	default:
		w.points = [2][][2]float64{f.Target, f.Target}
		if f.TargetRight != nil {
			w.points[solver.Right] = f.TargetRight
		}
	}
	for s, points := range w.points {
		for _, p := range points {
			w.curves[s].Travel = append(w.curves[s].Travel, d.Units.Millimetres(p[0]))
			w.curves[s].Change = append(w.curves[s].Change, solver.Deg(p[1]))
		}
	}
	return w
}

// TargetPoints returns the wanted toe change of a side, by travel in file units, in
// degrees, whichever way the study states it; none where it is flat.
func (c *Cars) TargetPoints(s solver.Side) [][2]float64 { return c.wanted.points[s] }

// Target returns the wanted toe change of a side; flat where the study has none.
func (c *Cars) Target(s solver.Side) *optimize.Target { return &c.wanted.curves[s] }

// wantsStill reports whether a document that differs in its candidates alone wants what
// was wanted when the cars were solved: it does not where the curve of a candidate is
// wanted that has changed.
func (c *Cars) wantsStill(d *study.Document) bool {
	if d.Search == nil || d.Search.TargetOf == "" || d.Search.TargetOf == study.BaseName {
		return true
	}
	k := d.Candidate(d.Search.TargetOf)
	i := slices.IndexFunc(c.List, func(car *Car) bool { return car.Index > 0 && car.Name == d.Search.TargetOf })
	return k != nil && i >= 0 && c.List[i].is(*k)
}

// TargetCar returns the index of the car whose curve is wanted, -1 where none is, or one
// that is gone.
func (s *Session) TargetCar() int {
	f := s.doc.Search
	switch {
	case f == nil || f.TargetOf == "":
		return -1
	case f.TargetOf == study.BaseName:
		return 0
	}
	for i := range s.doc.Candidates {
		if s.doc.Candidates[i].Name == f.TargetOf {
			return i + 1
		}
	}
	return -1
}

// SetTargetCar wants the curve of a car, 0 for the base car.
func (s *Session) SetTargetCar(car int) error {
	name := study.BaseName
	if car > 0 {
		if err := s.checkCandidate(car); err != nil {
			return err
		}
		name = s.doc.Candidates[car-1].Name
	}
	return s.EditSearch("want the curve of "+name, "", func(f *study.Search) {
		setTarget(f, nil)
		f.TargetRight, f.TargetOf = nil, name
	})
}

// setTarget states the target by points, none for a flat one, in place of any other
// way.
func setTarget(f *study.Search, points [][2]float64) {
	f.Target, f.TargetOf, f.TargetSlope = points, "", 0
}
