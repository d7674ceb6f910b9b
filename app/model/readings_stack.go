package model

import (
	"maps"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// Stack is the part by whose height runs differ: the one that advice is asked on.
type Stack struct {
	Parameter string
	Label     string
	Value     float64 // change from the car as measured, file units
}

// StackOf returns the height at which a run was read; ok is false where the car has no such
// part, or where left and right were unlike.
func (s *Session) StackOf(r Run) (st Stack, ok bool) {
	a := AdviseOf(s.doc, s.cars.Design)
	if a == nil {
		return Stack{}, false
	}
	p, sides, err := solver.FindParameter(s.cars.Design, a.Parameter)
	if err != nil || p.Quantity != solver.LengthQuantity || sides.Suffix() != "" {
		return Stack{}, false
	}
	changes := s.doc.Readings[r.First()].Changes
	for key := range changes {
		if strings.HasPrefix(key, a.Parameter+"@") {
			return Stack{}, false
		}
	}
	return Stack{a.Parameter, p.Label, changes[a.Parameter]}, true
}

// SetStack says at which height a run was read, in file units. The name that the run had of
// a car goes with it.
func (s *Session) SetStack(r Run, value float64) error {
	st, ok := s.StackOf(r)
	if !ok || st.Value == value {
		return nil
	}
	return s.SetRun(r, "stack of a run", func(set *study.Reading) {
		set.Changes = withStack(set.Changes, st.Parameter, value)
		if s.isCar(set.Note) {
			set.Note = ""
		}
	})
}

// isCar reports whether a note is but the name of a car.
func (s *Session) isCar(note string) bool {
	return slices.ContainsFunc(s.cars.List, func(c *Car) bool { return c.Name == note })
}

// NextStack returns the height of the run after the last: on by the spacing of the last two.
func (s *Session) NextStack() (value float64, ok bool) {
	runs := Runs(s.doc)
	if len(runs) == 0 {
		return 0, false
	}
	last, ok := s.StackOf(runs[len(runs)-1])
	if !ok || len(runs) == 1 {
		return last.Value, ok
	}
	before, ok := s.StackOf(runs[len(runs)-2])
	if !ok {
		return last.Value, true
	}
	return exact(2*last.Value - before.Value), true
}

// withStack returns changes with a height among them.
func withStack(c study.Changes, parameter string, value float64) study.Changes {
	with := maps.Clone(c)
	if with == nil {
		with = study.Changes{}
	}
	if with[parameter] = value; value == 0 {
		delete(with, parameter)
	}
	if len(with) == 0 {
		return nil
	}
	return with
}
