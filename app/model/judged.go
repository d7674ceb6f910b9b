package model

import (
	"slices"

	"toewright/solver"
)

// judged returns the curves over the travels that figures are taken over: parts of the
// car's curves where its travels are among those, else swept by themselves.
func (c *Cars) judged(car *Car) ([2]solver.Curve, error) {
	first := slices.Index(c.Travels, c.Judged[0])
	if first < 0 || !hasRun(c.Travels[first:], c.Judged) {
		return sweep(car.Axle, c.ws, c.Judged)
	}
	var parts [2]solver.Curve
	for _, s := range solver.Sides {
		parts[s] = part(&car.Curves[s], c.Judged[0], c.Judged[len(c.Judged)-1])
	}
	return parts, nil
}

// hasRun reports whether a list begins with a run.
func hasRun(list, run []float64) bool {
	return len(run) <= len(list) && slices.Equal(list[:len(run)], run)
}

// part returns the part of a curve between two travels, in mm. A lock beyond them does
// not end it.
func part(c *solver.Curve, low, high float64) solver.Curve {
	p := solver.Curve{Reach: c.Reach}
	from := slices.IndexFunc(c.Positions, func(q solver.Position) bool { return q.Travel >= low })
	if from >= 0 {
		p.Positions = c.Positions[from:]
	}
	if to := slices.IndexFunc(p.Positions, func(q solver.Position) bool { return q.Travel > high }); to >= 0 {
		p.Positions = p.Positions[:to]
	}
	p.Reach.BumpEnds = p.Reach.BumpEnds && p.Reach.Bump < high
	p.Reach.DroopEnds = p.Reach.DroopEnds && p.Reach.Droop < -low
	return p
}
