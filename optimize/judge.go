package optimize

import (
	"math"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Judge moves cars through a window and says how near their toe curves come to a
// target. It is what a map, a shelf and a series ask of each of their cars. Of both
// wheels the worse is the car's.
type Judge struct {
	Base    *solver.Assembler
	Hold    solver.Hold
	Travels []float64 // mm, ascending, 0 among them
	Targets [2]Target
	Sides   solver.Selection
	From    solver.Attitude
	// Built is nil where static toe is set again on each car, and toe change
	// counts from the car's own toe at travel 0; see [Judge.LeaveToe].
	Built *Built
}

// Check returns an error that says what the judge lacks.
func (j *Judge) Check() error {
	if indexOfZero(j.Travels) < 0 {
		return nlp.ProblemErrorf("the window does not contain travel 0")
	}
	for i := range j.Targets {
		if err := j.Targets[i].Check(); err != nil {
			return err
		}
	}
	return nil
}

// bench is a judge's memory for one goroutine.
type bench struct {
	*Judge
	sides  []solver.Side // moved
	zero   int
	ws     *solver.Workspace
	car    solver.Axle // judged last
	curves [2]solver.Curve
	change []float64 // toe change less target of the car judged last
}

// bench moves all wheels judged.
func (j *Judge) bench() *bench { return j.benchOf(wheelsOf(j.Sides)) }

// benchFor moves one wheel in place of both where all cars are changed on both sides
// alike and the wheels therefore do the same.
func (j *Judge) benchFor(changedAlike bool) *bench {
	if changedAlike && j.Sides == solver.BothSides && alike(j.Base, &j.Targets, j.From) {
		return j.benchOf(solver.Sides[:1])
	}
	return j.bench()
}

func (j *Judge) benchOf(wheels []solver.Side) *bench {
	b := &bench{Judge: j, sides: wheels, zero: indexOfZero(j.Travels), ws: solver.NewWorkspace()}
	b.change = make([]float64, len(b.sides)*len(j.Travels))
	return b
}

// figures is judgeSides where nothing else is asked of the car.
func (b *bench) figures(changes []solver.Change) Figures {
	_, f := b.judgeSides(selectionOf(b.sides), changes)
	return f
}

// judgeSides assembles and moves the car with the given changes, of which no more than
// the given sides are needed. It returns the car, nil where it cannot be built or does
// not reach the window; figures are NaN then. The car is valid until the next one is
// judged.
func (b *bench) judgeSides(sides solver.Selection, changes []solver.Change) (*solver.Axle, Figures) {
	if err := b.assemble(&b.car, sides, changes); err != nil || !b.move(&b.car) {
		for i := range b.change {
			b.change[i] = math.NaN()
		}
		return nil, nowhere
	}
	b.compare()
	return &b.car, CarFigures(b.change, len(b.sides))
}

// move sweeps a car; false where it does not reach the window.
func (b *bench) move(car *solver.Axle) bool {
	in := solver.SweepInput{ToeOnly: true, Travels: b.Travels, Sides: selectionOf(b.sides), From: b.From}
	if err := car.Sweep(b.ws, &in, &b.curves); err != nil {
		return false
	}
	for _, side := range b.sides {
		if !b.curves[side].Reach.Whole() {
			return false
		}
	}
	return true
}

// compare sets change from the curves.
func (b *bench) compare() {
	k := 0
	for _, side := range b.sides {
		c := &b.curves[side]
		home := b.home(c, b.zero, side)
		for _, p := range c.Positions {
			b.change[k] = float64(p.Toe - home - b.Targets[side].At(p.Travel))
			k++
		}
	}
}
