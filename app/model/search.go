package model

import (
	"math"
	"slices"
	"sort"

	"toewright/internal/study"
	"toewright/solver"
)

// SearchOf returns the search of a study. A study that has none gets the usual one:
// the height of the outer ball and the length of the arm free within the registry's
// usual bounds, as far as the car has them, against a flat curve.
func SearchOf(d *study.Document, design *solver.Design) *study.Search {
	if d.Search != nil {
		return d.Search
	}
	s := &study.Search{}
	for _, key := range []string{"tieRodOuterHeight", "steeringArmLength"} {
		if v, ok := usualVariable(d, design, key); ok {
			s.Variables = append(s.Variables, v)
		}
	}
	return s
}

// usualVariable returns a parameter free within its usual bounds, to the nearest
// round number of the file's units.
func usualVariable(d *study.Document, design *solver.Design, key string) (study.Variable, bool) {
	p, _, err := solver.FindParameter(design, key)
	if err != nil {
		return study.Variable{}, false
	}
	return study.Variable{Parameter: key, Min: round(d.FromSolver(p, p.Min)), Max: round(d.FromSolver(p, p.Max))}, true
}

// round rounds to a hundredth.
func round(x float64) float64 { return math.Round(x*100) / 100 }

// WithSearch returns the document with a search in it: its own, or the usual one.
func WithSearch(d *study.Document, design *solver.Design) *study.Document {
	with := *d
	with.Search = SearchOf(d, design)
	return &with
}

// SetWindow sets the travel over which curves are judged, in file units.
func (s *Session) SetWindow(w study.Travel) error {
	return s.EditSearch("window", "", func(f *study.Search) { f.Window = &w })
}

// EditSearch changes the study's search, which is given the usual one first if it has
// none.
func (s *Session) EditSearch(label, run string, change func(*study.Search)) error {
	return s.Edit(label, run, func(d *study.Document) {
		if s.cars.Design != nil {
			d.Search = SearchOf(d, s.cars.Design)
		} else if d.Search == nil {
			d.Search = &study.Search{}
		}
		change(d.Search)
	})
}

// Free frees a parameter within its usual bounds.
func (s *Session) Free(key string) error {
	return s.EditSearch("free "+key, "", func(f *study.Search) {
		if slices.ContainsFunc(f.Variables, func(v study.Variable) bool { return v.Parameter == key }) {
			return
		}
		if v, ok := usualVariable(s.doc, s.cars.Design, key); ok {
			f.Variables = append(f.Variables, v)
		}
	})
}

// Fix takes a parameter out of the search.
func (s *Session) Fix(key string) error {
	return s.EditSearch("fix "+key, "", func(f *study.Search) {
		f.Variables = slices.DeleteFunc(f.Variables, func(v study.Variable) bool { return v.Parameter == key })
	})
}

// SetBounds sets the bounds of a free parameter, in file units or degrees.
func (s *Session) SetBounds(key string, lo, hi float64) error {
	return s.EditSearch("bounds of "+key, "", func(f *study.Search) {
		for i := range f.Variables {
			if f.Variables[i].Parameter == key {
				f.Variables[i].Min, f.Variables[i].Max = lo, hi
			}
		}
	})
}

// TargetKind is the way in which a target is stated.
type TargetKind uint8

// The ways to state a target: no toe change at all, so much for each unit of travel, a
// list of points, typed or drawn, or the curve of another car of the study.
const (
	FlatTarget TargetKind = iota
	SlopeTarget
	PointsTarget
	CarTarget
)

// KindOfTarget returns the way in which a search states its target: two points on a
// line through the origin, one on each side of it, are a slope.
func KindOfTarget(f *study.Search) TargetKind {
	t := f.Target
	switch {
	case f.TargetSlope != 0:
		return SlopeTarget
	case f.TargetOf != "":
		return CarTarget
	case len(t) == 0:
		return FlatTarget
	case len(t) == 2 && t[0][0] < 0 && t[1][0] > 0 && t[0][1]*t[1][0] == t[1][1]*t[0][0]:
		return SlopeTarget
	}
	return PointsTarget
}

// Slope returns the slope of a target that is one, in degrees per unit of length.
func Slope(f *study.Search) float64 {
	if KindOfTarget(f) != SlopeTarget {
		return 0
	}
	if f.TargetSlope != 0 {
		return f.TargetSlope
	}
	return f.Target[1][1] / f.Target[1][0]
}

// slopeTarget returns the target of a slope over a window. Its ends lie as far on
// either side, so that they are on one line to the last bit.
func slopeTarget(w study.Travel, slope float64) [][2]float64 {
	end := max(w.Bump, w.Droop)
	return [][2]float64{{-end, -slope * end}, {end, slope * end}}
}

// SetTarget states the target in another way: a slope of 0.001 degrees per unit of
// length to begin with, points where the present target has them, or the base car's curve.
func (s *Session) SetTarget(kind TargetKind) error {
	w := s.doc.SearchWindow()
	return s.EditSearch("change the target", "", func(f *study.Search) {
		f.TargetRight = nil
		switch kind {
		case FlatTarget:
			setTarget(f, nil)
		case SlopeTarget:
			setTarget(f, slopeTarget(w, firstSlope))
		case PointsTarget:
			setTarget(f, [][2]float64{{-w.Droop, 0}, {0, 0}, {w.Bump, 0}})
		case CarTarget:
			setTarget(f, nil)
			f.TargetOf = study.BaseName
		}
	})
}

// firstSlope is the slope that a target has before its own is typed: toe-out in bump,
// degrees per unit of length.
const firstSlope = -0.001

// SetSlope sets a target of a slope, in degrees per unit of length.
func (s *Session) SetSlope(slope float64) error {
	w := s.doc.SearchWindow()
	return s.EditSearch("slope of the target", "", func(f *study.Search) { setTarget(f, slopeTarget(w, slope)) })
}

// SetTargetPoints sets a target by points of travel and toe change in degrees, which
// are put in order; of two at one travel the later counts.
func (s *Session) SetTargetPoints(points [][2]float64, run string) error {
	sorted := slices.Clone(points)
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i][0] < sorted[j][0] })
	var unique [][2]float64
	for _, p := range sorted {
		if n := len(unique); n > 0 && unique[n-1][0] == p[0] {
			unique[n-1] = p
			continue
		}
		unique = append(unique, p)
	}
	return s.EditSearch("points of the target", run, func(f *study.Search) { setTarget(f, unique) })
}

// SetGrid states the step that the shop can hold of a free parameter, in file units
// or degrees, in place of sizes; 0 is any value.
func (s *Session) SetGrid(key string, step float64) error {
	return s.EditSearch("step of "+key, "", func(f *study.Search) {
		for i := range f.Variables {
			if f.Variables[i].Parameter == key {
				f.Variables[i].Grid = step
				if step > 0 {
					f.Variables[i].Sizes = nil
				}
			}
		}
	})
}
