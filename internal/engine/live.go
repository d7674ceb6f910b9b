package engine

import (
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// Live is the base car and the candidates of a study that is being edited, with what a
// page shows of them in every frame. Its cars, windows, targets and figures are those of
// [Sweep] and [Compare]. It belongs to one goroutine.
type Live struct {
	// Err says why not even the base car can be made; List is empty then.
	Err    error
	Design *solver.Design // nil where the study states none
	// Travels are those of the curves, mm, ascending; Judged those of the figures, the
	// window of the search where it has one of its own.
	Travels, Judged []float64
	// List is the base car and then the candidates in their order.
	List []*LiveCar

	window *sweeper
	judge  *sweeper // its document has the target as points
	wanted [2]optimize.Target
	points *TargetCurves    // what wanted was made of; nil where it is flat
	of     *study.Candidate // whose curve is wanted, as it was taken
	spare  []*LiveCar       // the list that List takes turns with
	solved uint64           // how many cars have been
}

// NewLive solves the cars of a study. A car that cannot be solved says so itself.
func NewLive(d *study.Document) *Live {
	l := &Live{}
	if l.Err = InUnits(l.open(d), d); l.Err != nil {
		l.Design, _ = d.Design()
		return l
	}
	l.aim(d)
	base := &LiveCar{Candidate: study.Candidate{Name: study.BaseName}}
	l.solve(base)
	l.List = []*LiveCar{base}
	l.Follow(d)
	return l
}

// open makes what all cars of a study are moved by.
func (l *Live) open(d *study.Document) (err error) {
	if l.window, err = newSweeper(d, d.Window(), ""); err != nil {
		return err
	}
	l.Design, l.Travels = l.window.design, l.window.grid.mm
	if l.judge, err = l.window.over(d.SearchWindow()); err != nil {
		return err
	}
	l.Judged = l.judge.grid.mm
	return nil
}

// over returns a sweeper of the same cars over another window.
func (s *sweeper) over(w study.Travel) (*sweeper, error) {
	own, cars := *s, *s.cars
	own.cars, own.window, own.curves = &cars, w, [2]solver.Curve{}
	var err error
	own.grid, err = newGrid(w, s.doc.Units)
	return &own, err
}

// Follow takes in a study that differs from the last one in its candidates alone. Those
// that stand as they stood are not solved anew: in a drag that is all but one. The others
// are solved in the memory that there is: a frame of a drag allocates nothing but what
// [solver.Assembler.Reassemble] does, unless a coordinate is dragged or the car whose curve
// the others are to have.
func (l *Live) Follow(d *study.Document) {
	if l.Err != nil {
		return
	}
	l.window.doc = d
	aimed := l.aim(d)
	before, next := l.List, append(l.spare[:0], l.List[0])
	before[0] = nil
	for i := range d.Candidates {
		next = append(next, takeAlike(before, &d.Candidates[i], i+1))
	}
	for i := range d.Candidates {
		k, old := &d.Candidates[i], next[i+1]
		if old == nil {
			next[i+1] = takeAny(before)
		}
		next[i+1].Candidate, next[i+1].Index = *k, i+1
		if old == nil {
			l.solve(next[i+1])
		}
	}
	l.List, l.spare = next, before
	if aimed {
		for _, car := range l.List {
			l.judgeCar(car)
		}
	}
}

// takeAlike takes a car out of a list that was solved with the parts and setpoints of a
// candidate, or returns nil. The car of the index is looked at first: most stay where they
// were.
func takeAlike(list []*LiveCar, k *study.Candidate, index int) *LiveCar {
	take := func(i int) *LiveCar {
		car := list[i]
		if car == nil || !sameParts(&car.Candidate, k) {
			return nil
		}
		list[i] = nil
		return car
	}
	if index < len(list) {
		if car := take(index); car != nil {
			return car
		}
	}
	for i := range list {
		if car := take(i); car != nil {
			return car
		}
	}
	return nil
}

// takeAny takes a car out of a list, or returns a new one.
func takeAny(list []*LiveCar) *LiveCar {
	for i, car := range list {
		if car != nil {
			list[i] = nil
			return car
		}
	}
	return &LiveCar{}
}

// Try solves a car that is none of the study's, of a candidate's changes.
func (l *Live) Try(changes study.Changes) *LiveCar {
	c := &LiveCar{Candidate: study.Candidate{Changes: changes}, Index: -1}
	l.solve(c)
	return c
}

// Axle says what both wheels of a car that is solved do together, as [Axle] does at its usual
// speed and over its usual distance.
func (l *Live) Axle(c *LiveCar) (AxleCar, error) {
	return l.judge.axleCar(car{name: c.Name, axle: c.Axle}, &AxleResult{Speed: DefaultSpeed, Distance: DefaultDistance})
}

// solve assembles and moves a car as its candidate says.
func (l *Live) solve(c *LiveCar) {
	l.solved++
	c.solved = l.solved
	if c.Err = InUnits(l.move(c), l.window.doc); c.Err != nil {
		c.forget()
	}
	l.judgeCar(c)
}

// move takes a car's curves over both windows.
func (l *Live) move(c *LiveCar) error {
	if err := l.assemble(c); err != nil {
		return err
	}
	in := solver.SweepInput{Travels: l.Travels, Ground: true, Instant: true, RestOnly: true}
	if err := c.Axle.Sweep(l.window.ws, &in, &c.Curves); err != nil || l.oneWindow() {
		return err
	}
	in.Travels = l.Judged
	return c.Axle.Sweep(l.window.ws, &in, &c.judged)
}

// oneWindow reports whether the figures are of the curves that are shown.
func (l *Live) oneWindow() bool { return l.window.window == l.judge.window }

// assemble makes a car's axle in the memory that the car has.
func (l *Live) assemble(c *LiveCar) error {
	list, err := l.window.doc.AppendSolverChanges(c.changes[:0], l.Design, c.Changes)
	if err != nil {
		return err
	}
	hold, err := study.Hold(c.Hold)
	if err != nil {
		return err
	}
	c.changes, c.Axle = list, &c.axle
	return l.window.base.Reassemble(c.Axle, solver.BothSides, list, hold, nil)
}

// judgeCar sets what is said of a car's toe against the target.
func (l *Live) judgeCar(c *LiveCar) {
	for _, side := range solver.Sides {
		curve := &c.judged[side]
		if l.oneWindow() {
			curve = &c.Curves[side]
		}
		c.Reach[side] = curve.Reach
		if f, ok := solver.NewFigures(curve.Positions, l.wanted[side].At); ok {
			c.Figures[side] = f
		} else {
			c.Figures[side] = noToeFigures
		}
	}
}

// ToeFigures returns those of the toe of one wheel of a car as [Compare] has them; none
// where the car cannot be solved. The other figures are none.
func (l *Live) ToeFigures(c *LiveCar, side solver.Side) Figures {
	f := noFigures()
	if c.Err == nil && l.judge != nil {
		l.judge.toeFigures(&c.Figures[side], &f)
	}
	return f
}
