package model

import (
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// Cars are the cars of a study as they stood after an edit.
type Cars struct {
	*engine.Live

	parameters map[string]solver.Parameter // by key, once they have been asked for
	read       *readTravels                // nil until it is asked for
}

// Car is one car of a study.
type Car = engine.LiveCar

// Solve solves the base car and all candidates of a document.
func Solve(d *study.Document) *Cars { return &Cars{Live: engine.NewLive(d)} }

// again returns the cars of a document that differs from the solved one in its candidates
// alone.
func (c *Cars) again(d *study.Document) *Cars {
	c.Follow(d)
	next := *c
	return &next
}

// Base returns the base car, nil where it cannot be solved.
func (c *Cars) Base() *Car { return c.At(0) }

// At returns the car of an index, nil where there is none.
func (c *Cars) At(i int) *Car {
	if i < 0 || i >= len(c.List) {
		return nil
	}
	return c.List[i]
}

// Parameter returns the parameter of a key, with a side or without.
func (c *Cars) Parameter(key string) (solver.Parameter, bool) {
	if c.parameters == nil && c.Design != nil {
		c.parameters = map[string]solver.Parameter{}
		for _, p := range solver.Parameters(c.Design) {
			c.parameters[p.Key] = p
		}
	}
	name, _, _ := strings.Cut(key, "@")
	p, ok := c.parameters[name]
	return p, ok
}

// wordFor returns what the parameter of a key, with a side or without, is called; the key
// itself where the car has none of it.
func (c *Cars) wordFor(key string) string {
	_, side, _ := strings.Cut(key, "@")
	p, ok := c.Parameter(key)
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
