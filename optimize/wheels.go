package optimize

import (
	"math"
	"slices"

	"toewright/solver"
)

// Figures are what is said of a toe curve against its target.
type Figures struct {
	RMS  solver.Angle // root mean square over the positions
	Peak solver.Angle // largest magnitude
}

// nowhere is said of a car that cannot be moved through the window.
var nowhere = Figures{solver.Angle(math.NaN()), solver.Angle(math.NaN())}

// Of returns the figure that a measure asks for.
func (f Figures) Of(m Measure) solver.Angle {
	if m == Peak {
		return f.Peak
	}
	return f.RMS
}

// CarFigures returns the figures of a car, which is as good as its worse wheel: each
// is the larger of its wheels' own. The residuals, radians, are those of so many
// wheels, as many of each, one wheel after the other; NaN among them gives NaN.
func CarFigures(residuals []float64, wheels int) Figures {
	var car Figures
	for wheel := range slices.Chunk(residuals, max(len(residuals)/wheels, 1)) {
		f := wheelFigures(wheel)
		car.RMS, car.Peak = max(car.RMS, f.RMS), max(car.Peak, f.Peak)
	}
	return car
}

// wheelFigures returns the figures of one wheel's residuals.
func wheelFigures(r []float64) Figures {
	var misses solver.Misses
	for _, x := range r {
		misses.See(solver.Angle(x))
	}
	return Figures{misses.RMS(), misses.Peak()}
}

// wheelsOf lists the wheels of a selection.
func wheelsOf(s solver.Selection) []solver.Side {
	switch s {
	case solver.LeftOnly:
		return solver.Sides[:1]
	case solver.RightOnly:
		return solver.Sides[1:]
	}
	return solver.Sides[:]
}

// selectionOf returns the selection of some wheels, at least one.
func selectionOf(wheels []solver.Side) solver.Selection {
	switch {
	case len(wheels) == 2:
		return solver.BothSides
	case wheels[0] == solver.Left:
		return solver.LeftOnly
	}
	return solver.RightOnly
}

// alike reports whether both wheels of every car of a design do the same: it is its
// own mirror image, as are its targets, and it stands straight and level. That it is
// changed on both sides alike is for the caller to know.
func alike(base *solver.Assembler, targets *[2]Target, from solver.Attitude) bool {
	l, r := &targets[solver.Left], &targets[solver.Right]
	return from.Steer == 0 && from.Roll == 0 && base.Design().Mirrored() &&
		slices.Equal(l.Travel, r.Travel) && slices.Equal(l.Change, r.Change)
}

// changedAlike reports whether changes are of both sides.
func changedAlike(changes []solver.Change) bool {
	return !slices.ContainsFunc(changes, func(c solver.Change) bool { return c.Sides != solver.BothSides })
}
