package optimize

import (
	"toewright/optimize/nlp"
	"toewright/solver"
)

// Scenario is a set-up that one answer must serve: the car as its owner has it.
// The zero value is the base car straight ahead at static height.
type Scenario struct {
	Name    string
	Changes []solver.Change // of the base car, beside what is searched
	Hold    solver.Hold     // setpoints re-solved; see [solver.Assembler.Assemble]
	Weight  float64         // share in a weighted search; 0 means 1
	From    solver.Attitude // attitude about which the travel is taken
	Motion  solver.Motion
}

func (s *Scenario) weight() float64 {
	if s.Weight == 0 {
		return 1
	}
	return s.Weight
}

// conflict returns an error where a scenario sets what is searched for.
func (s *Scenario) conflict(free []Free) error {
	for i := range s.Changes {
		for j := range free {
			c, f := &s.Changes[i], &free[j]
			if c.Parameter.Key == f.Parameter.Key && c.Parameter.Absolute && c.Sides.Overlaps(f.Sides) {
				return nlp.ProblemErrorf("scenario %q sets %s, which is searched for too", s.Name, c.Key())
			}
		}
	}
	return nil
}

// Free is a parameter that a search may change, within bounds in mm or radians.
type Free struct {
	Parameter solver.Parameter
	Sides     solver.Selection
	Min, Max  float64
}

// Key returns the parameter's key with the side it is restricted to.
func (f *Free) Key() string { return f.Parameter.Key + f.Sides.Suffix() }

// change returns the change of the free parameter to a value.
func (f *Free) change(v float64) solver.Change {
	return solver.Change{Parameter: f.Parameter, Sides: f.Sides, Value: v}
}
