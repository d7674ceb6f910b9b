package main

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// kindOfCar is a template whose cars are simulated: what is advised on, and the
// window in which.
type kindOfCar struct {
	name   string
	number uint64
	base   *solver.Assembler
	solid  bool
	part   solver.Parameter
	window float64 // mm of bump and of droop
}

// kindsOfCar returns one for each template: every suspension with every gear.
func kindsOfCar() ([]kindOfCar, error) {
	var out []kindOfCar
	for i, t := range study.Templates() {
		k, err := newKind(t)
		if err != nil {
			return nil, fmt.Errorf("template %s: %w", t.Key, err)
		}
		k.number = uint64(i)
		out = append(out, k)
	}
	return out, nil
}

func newKind(t study.Template) (kindOfCar, error) {
	doc := t.Document()
	d, err := doc.Design()
	if err != nil {
		return kindOfCar{}, err
	}
	k := kindOfCar{name: t.Key, solid: len(d.Kind.CommonPoints) > 0}
	k.window = doc.Units.Millimetres(math.Min(doc.Travel.Bump, doc.Travel.Droop))
	key := "tieRodOuterHeight"
	if k.solid {
		key = "dragLinkOuterHeight"
	}
	if k.part, _, err = solver.FindParameter(d, key); err != nil {
		return k, err
	}
	k.base, err = solver.NewAssembler(d)
	return k, err
}

// car is a simulated car: the file's hardpoints are off by what it is.
type car struct {
	*kindOfCar
	off []solver.Change
	r   *rand.Rand
}

// carsOfKind keeps the generators of the cars of each kind apart.
const carsOfKind = 1 << 32

// draw returns car number n of a kind, every coordinate of every hardpoint off by
// a normal error of standard deviation sd, mm. It has a generator of its own, so
// that it is the same whatever is simulated beside it.
func (k *kindOfCar) draw(seed uint64, n int, sd float64) *car {
	c := &car{kindOfCar: k, r: rand.New(rand.NewPCG(seed, carsOfKind*k.number+uint64(n)))}
	for _, p := range solver.Parameters(k.base.Design()) {
		if !p.Coordinate() || p.OfGear() {
			continue
		}
		for _, sides := range k.sidesOf(p) {
			c.off = append(c.off, solver.Change{Parameter: p, Sides: sides, Value: sd * c.r.NormFloat64()})
		}
	}
	return c
}

// sidesOf returns the selections by which a parameter is drawn: both sides of a
// solid axle, whose wheels move each other, and the left one of the others.
func (k *kindOfCar) sidesOf(p solver.Parameter) []solver.Selection {
	switch {
	case !p.Sided():
		return []solver.Selection{solver.BothSides}
	case k.solid:
		return []solver.Selection{solver.LeftOnly, solver.RightOnly}
	}
	return []solver.Selection{solver.LeftOnly}
}

// sides returns the sides that are read.
func (k *kindOfCar) sides() []solver.Side {
	if k.solid {
		return solver.Sides[:]
	}
	return solver.Sides[:1]
}

// judged selects the sides on which a stack is judged.
func (k *kindOfCar) judged() solver.Selection {
	if k.solid {
		return solver.BothSides
	}
	return solver.LeftOnly
}

// travels returns the positions of the window in which toe change is judged.
func (k *kindOfCar) travels() ([]float64, error) {
	return solver.Grid(k.window, k.window, k.window/judgedSteps)
}

// judgedSteps is the number of steps of the window each way.
const judgedSteps = 10

// stackOf returns the part at a height.
func (k *kindOfCar) stackOf(height float64) []solver.Change {
	if height == 0 {
		return nil
	}
	return []solver.Change{{Parameter: k.part, Value: height}}
}

// best returns the height that makes the toe change of the true car least, by a
// search of its own on the true geometry, and false where there is none within
// the registry's bounds.
func (c *car) best(ctx context.Context) (float64, bool) {
	travels, err := c.travels()
	if err != nil {
		return 0, false
	}
	p := optimize.ToeSearch{
		Base: c.base, Travels: travels, Judge: c.judged(),
		Free:      []optimize.Free{{Parameter: c.part, Min: c.part.Min, Max: c.part.Max}},
		Scenarios: []optimize.Scenario{{Changes: c.off, Hold: solver.HoldAll}},
	}
	a, err := optimize.SearchToe(ctx, &p, &optimize.Settings{Restarts: searchRestarts})
	if err != nil || a.Values == nil {
		return 0, false
	}
	best := a.Values[0]
	return best, best > c.part.Min && best < c.part.Max
}

// searchRestarts are enough for one variable, whose valley is one.
const searchRestarts = 4
