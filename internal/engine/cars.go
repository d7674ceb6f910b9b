package engine

import (
	"context"
	"fmt"

	"toewright/internal/study"
	"toewright/solver"
)

// cars makes the cars of a study.
type cars struct {
	doc    *study.Document
	design *solver.Design
	base   *solver.Assembler
}

// car is the base car or a candidate, ready to be moved.
type car struct {
	name string
	axle *solver.Axle
}

// newCars checks the base car.
func newCars(d *study.Document) (*cars, error) {
	if err := d.ReadyToSweep(); err != nil {
		return nil, explain(err, "")
	}
	design, err := d.Design()
	if err != nil {
		return nil, explain(err, "")
	}
	base, err := solver.NewAssembler(design)
	if err != nil {
		return nil, explain(err, "")
	}
	return &cars{doc: d, design: design, base: base}, nil
}

// pick returns the base car and all candidates in order or, where a name is given,
// that one alone.
func (c *cars) pick(ctx context.Context, name string) ([]car, error) {
	if name == "" {
		return c.all(ctx)
	}
	one, err := c.byName(name)
	if err != nil {
		return nil, err
	}
	return []car{one}, nil
}

func (c *cars) all(ctx context.Context) ([]car, error) {
	first, err := c.byName(study.BaseName)
	if err != nil {
		return nil, err
	}
	list := []car{first}
	for i := range c.doc.Candidates {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		next, err := c.assemble(&c.doc.Candidates[i])
		if err != nil {
			return nil, err
		}
		list = append(list, next)
	}
	return list, nil
}

// byName returns the base car or the candidate of a name; of a name that two have neither.
func (c *cars) byName(name string) (car, error) { return c.named("candidate", name) }

// named is byName of a key or an option that says which car it is.
func (c *cars) named(key, name string) (car, error) {
	if name == study.BaseName {
		return c.assemble(&study.Candidate{Name: study.BaseName})
	}
	k := c.doc.Candidate(name)
	if k == nil {
		return car{}, wrongf(key, "none is called %.60q%s", name, c.known())
	}
	for i := range c.doc.Candidates {
		if twin := &c.doc.Candidates[i]; twin != k && twin.Name == name {
			return car{}, wrongf(key, "two are called %.60q; give candidates.%d a name of its own", name, i)
		}
	}
	return c.assemble(k)
}

// known lists what candidates there are, for a message.
func (c *cars) known() string {
	const most = 8 // a line has no room for more
	text := "; there is " + study.BaseName
	for i, k := range c.doc.Candidates {
		if i == most {
			return text + ", ..."
		}
		text += fmt.Sprintf(", %.40q", k.Name)
	}
	return text
}

func (c *cars) assemble(k *study.Candidate) (car, error) {
	axle, err := c.axle(k.Changes, k.Hold)
	if err != nil {
		return car{}, explain(err, label(k.Name))
	}
	return car{name: k.Name, axle: axle}, nil
}

// axle returns the axle with changes, its static position solved.
func (c *cars) axle(changes study.Changes, hold []string) (*solver.Axle, error) {
	list, err := c.doc.SolverChanges(c.design, changes)
	if err != nil {
		return nil, err
	}
	held, err := study.Hold(hold)
	if err != nil {
		return nil, err
	}
	return c.base.Assemble(list, held)
}

// label returns how messages call a car.
func label(name string) string {
	if name == study.BaseName {
		return "base car"
	}
	return fmt.Sprintf("candidate %.60q", name)
}
