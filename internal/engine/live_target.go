package engine

import (
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// aim takes the target of a study, whichever way that is stated, unless the one taken last
// is the same; it reports whether it did. The target is flat where the curve of a car is
// wanted that cannot be moved through the window.
func (l *Live) aim(d *study.Document) bool {
	of := targetCar(d)
	if l.of != nil && l.of.Name == of.Name && sameParts(l.of, &of) {
		return false
	}
	taken := of
	l.of, l.judge.doc = &taken, d
	l.points, l.wanted = nil, [2]optimize.Target{}
	if l.judge.resolveTarget() == nil {
		l.points, l.wanted = l.judge.targetCurves(), targets(l.judge.doc)
	}
	return true
}

// targetCar returns the candidate whose curve is wanted; an empty one where none is, or one
// that is gone.
func targetCar(d *study.Document) study.Candidate {
	if d.Search == nil || d.Search.TargetOf == "" || d.Search.TargetOf == study.BaseName {
		return study.Candidate{}
	}
	if k := d.Candidate(d.Search.TargetOf); k != nil {
		return *k
	}
	return study.Candidate{}
}

// Target returns the wanted toe change of a side; flat where the study has none.
func (l *Live) Target(s solver.Side) *optimize.Target { return &l.wanted[s] }

// TargetPoints returns the wanted toe change of a side, by travel in file units, in
// degrees, whichever way the study states it; none where it is flat.
func (l *Live) TargetPoints(s solver.Side) [][2]float64 {
	switch {
	case l.points == nil:
		return nil
	case s == solver.Left:
		return l.points.Left
	}
	return l.points.Right
}
