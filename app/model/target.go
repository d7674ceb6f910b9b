package model

import (
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// TargetPoints returns the wanted toe change of a side, by travel in file units, in
// degrees, whichever way the study states it; none where it is flat, or the curve of
// a car that cannot be moved.
func TargetPoints(d *study.Document, s solver.Side) [][2]float64 {
	f := d.Search
	switch {
	case f == nil:
		return nil
	case f.TargetOf != "" || f.TargetSlope != 0:
		return resolved(d, s)
	case s == solver.Right && f.TargetRight != nil:
		return f.TargetRight
	}
	return f.Target
}

// resolved returns the points of a target that is a slope or another car's curve.
func resolved(d *study.Document, s solver.Side) [][2]float64 {
	t, err := engine.Target(d)
	switch {
	case err != nil || t == nil:
		return nil
	case s == solver.Right:
		return t.Right
	}
	return t.Left
}

// setTarget states the target by points, none for a flat one, in place of any other
// way.
func setTarget(f *study.Search, points [][2]float64) {
	f.Target, f.TargetOf, f.TargetSlope = points, "", 0
}
