package model

import (
	"maps"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// Cars are the cars of a study, solved: the base car first, then the candidates
// in their order.
type Cars struct {
	// Err says why not even the base car can be solved; List is empty then.
	Err       error
	Design    *solver.Design
	Assembler *solver.Assembler
	List      []*Car
	// Travels are those of the curves, mm, ascending; Judged those of the figures,
	// the window of the search where it has one of its own.
	Travels, Judged []float64

	wanted wanted // what the study's target comes to

	parameters map[string]solver.Parameter // by key, once they have been asked for
	read       *readTravels                // nil until it is asked for
	ws         *solver.Workspace
}

// Car is one car of a study.
type Car struct {
	Index   int // 0 for the base car, else 1 + the candidate's place
	Name    string
	Changes study.Changes
	Hidden  bool
	// Err says why the car cannot be solved; what follows is empty then.
	Err     error
	Axle    *solver.Axle
	Curves  [2]solver.Curve // toe and more along the travel, straight ahead
	Figures [2]Figures

	hold []string // as the candidate has it
}

// Base returns the base car, nil where it cannot be solved.
func (c *Cars) Base() *Car {
	if len(c.List) == 0 {
		return nil
	}
	return c.List[0]
}

// At returns the car of an index, nil where there is none.
func (c *Cars) At(i int) *Car {
	if i < 0 || i >= len(c.List) {
		return nil
	}
	return c.List[i]
}

// Parameter returns the parameter of a key without a side.
func (c *Cars) Parameter(key string) (solver.Parameter, bool) {
	if c.parameters == nil && c.Design != nil {
		c.parameters = map[string]solver.Parameter{}
		for _, p := range solver.Parameters(c.Design) {
			c.parameters[p.Key] = p
		}
	}
	p, ok := c.parameters[key]
	return p, ok
}

// wordFor returns what the parameter of a key, with a side or without, is called; the key
// itself where the car has none of it.
func (c *Cars) wordFor(key string) string {
	name, side, _ := strings.Cut(key, "@")
	p, ok := c.Parameter(name)
	switch {
	case !ok:
		return key
	case side != "":
		return p.Label + ", " + side
	}
	return p.Label
}

// solve solves all cars of the session's document.
func (s *Session) solve() { s.cars = Solve(s.doc) }

// Solve solves the base car and all candidates of a document.
func Solve(d *study.Document) *Cars {
	c := &Cars{wanted: wantedOf(d)}
	if c.Design, c.Err = d.Design(); c.Err != nil {
		return c
	}
	if c.Assembler, c.Err = solver.NewAssembler(c.Design); c.Err != nil {
		return c
	}
	if c.Travels, c.Err = grid(d, d.Window()); c.Err != nil {
		return c
	}
	if c.Judged, c.Err = grid(d, d.SearchWindow()); c.Err != nil {
		return c
	}
	c.ws = solver.NewWorkspace()
	c.List = append(c.List, c.car(d, study.Candidate{Name: study.BaseName}, 0))
	for i, k := range d.Candidates {
		c.List = append(c.List, c.car(d, k, i+1))
	}
	return c
}

// again solves the candidates of a document that differs from the solved one in its
// candidates alone. Those that stand as they stood are not solved anew: in a drag that
// is all but one, unless it is the car whose curve the others are to have.
func (c *Cars) again(d *study.Document) *Cars {
	if c.Err != nil || !c.wantsStill(d) {
		return Solve(d)
	}
	next := *c
	next.List = append(make([]*Car, 0, 1+len(d.Candidates)), c.List[0])
	for i, k := range d.Candidates {
		car := c.solved(k, i+1)
		if car == nil {
			car = c.car(d, k, i+1)
		} else {
			car.Index, car.Name, car.Hidden = i+1, k.Name, k.Hidden
		}
		next.List = append(next.List, car)
	}
	return &next
}

// solved returns a copy of a car that was solved with the parts and setpoints of a
// candidate, or nil. The car of the index is looked at first: most stay where they were.
func (c *Cars) solved(k study.Candidate, index int) *Car {
	if car := c.At(index); car != nil && car.is(k) {
		found := *car
		return &found
	}
	for _, car := range c.List[1:] {
		if car.is(k) {
			found := *car
			return &found
		}
	}
	return nil
}

// is reports whether the car has the parts and setpoints of a candidate.
func (c *Car) is(k study.Candidate) bool {
	return maps.Equal(c.Changes, k.Changes) && slices.Equal(c.hold, k.Hold) && (c.hold == nil) == (k.Hold == nil)
}

// car solves one car.
func (c *Cars) car(d *study.Document, k study.Candidate, index int) *Car {
	car := &Car{Index: index, Name: k.Name, Changes: k.Changes, Hidden: k.Hidden, hold: k.Hold}
	changes, err := d.SolverChanges(c.Design, k.Changes)
	if err != nil {
		car.Err = err
		return car
	}
	hold, err := study.Hold(k.Hold)
	if err != nil {
		car.Err = err
		return car
	}
	if car.Axle, car.Err = c.Assembler.Assemble(changes, hold); car.Err != nil {
		return car
	}
	if car.Curves, car.Err = sweep(car.Axle, c.ws, c.Travels); car.Err != nil {
		return car
	}
	var judged [2]solver.Curve
	if judged, car.Err = c.judged(car); car.Err != nil {
		return car
	}
	for _, s := range solver.Sides {
		car.Figures[s] = figuresOf(&judged[s], c.Target(s))
	}
	return car
}

// grid returns the travels of a window in mm.
func grid(d *study.Document, w study.Travel) ([]float64, error) {
	mm := d.Units.Millimetres
	return solver.Grid(mm(w.Bump), mm(w.Droop), mm(w.Step))
}

// sweep moves a car through travels in mm, straight ahead.
func sweep(x *solver.Axle, ws *solver.Workspace, travels []float64) (curves [2]solver.Curve, err error) {
	in := solver.SweepInput{Travels: travels, Ground: true, Instant: true}
	err = x.Sweep(ws, &in, &curves)
	return curves, err
}
