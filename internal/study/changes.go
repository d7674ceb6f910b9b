package study

import (
	"maps"
	"slices"

	"toewright/solver"
)

// SolverChanges returns changes as the solver takes them, in millimetres and
// radians and in the order of their keys. The error names a key that the car does
// not have, a value that is out of all proportion, or a key that stands both plain and
// with a side.
func (d *Document) SolverChanges(design *solver.Design, changes Changes) ([]solver.Change, error) {
	return d.AppendSolverChanges(make([]solver.Change, 0, len(changes)), design, changes)
}

// usualChanges is how many changes of a car are ordered without memory of their own.
const usualChanges = 16

// AppendSolverChanges is [Document.SolverChanges] in the memory of a list.
func (d *Document) AppendSolverChanges(list []solver.Change, design *solver.Design, changes Changes) ([]solver.Change, error) {
	var room [usualChanges]string
	keys := slices.AppendSeq(room[:0], maps.Keys(changes))
	slices.Sort(keys)
	for _, key := range keys {
		p, _, err := solver.FindParameter(design, key)
		if err != nil {
			return nil, err
		}
		c, err := solver.NewChange(design, key, d.ToSolver(p, changes[key]))
		if err != nil {
			return nil, err
		}
		list = append(list, c)
	}
	return list, solver.CheckOnce(len(list), func(i int) (*solver.Parameter, solver.Selection) {
		return &list[i].Parameter, list[i].Sides
	})
}

// ToSolver returns a parameter's value, in file units or degrees, in mm or radians.
func (d *Document) ToSolver(p solver.Parameter, value float64) float64 {
	if p.Quantity == solver.AngleQuantity {
		return solver.Deg(value).Radians()
	}
	return d.Units.Millimetres(value)
}

// FromSolver returns a parameter's value, in mm or radians, in file units or degrees.
func (d *Document) FromSolver(p solver.Parameter, value float64) float64 {
	if p.Quantity == solver.AngleQuantity {
		return solver.Angle(value).Degrees()
	}
	return d.Units.FromMillimetres(value)
}

// Hold returns the setpoints that a list of names holds; nil is all of them.
func Hold(names []string) (solver.Hold, error) {
	if names == nil {
		return solver.HoldAll, nil
	}
	return solver.ParseHold(names)
}
