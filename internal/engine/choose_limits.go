package engine

import (
	"context"

	"toewright/internal/study"
)

// standing returns how the car with a combination's changes stands to the limits.
func (c *chooser) standing(changes study.Changes) (out []LimitResult) {
	if len(c.shelf.Limits) == 0 {
		return nil
	}
	list, err := c.doc.SolverChanges(c.design, changes)
	if err != nil {
		return nil
	}
	cars := c.limitCars(c.ups, list, c.shelf.Hold)
	for i := range c.shelf.Limits {
		out = append(out, c.standsIn(&c.doc.Search.Limits[i], &c.shelf.Limits[i], cars))
	}
	return out
}

// conflictCombinations is on how many combinations a conflict of limits is judged.
const conflictCombinations = 4096

// conflict says which limits stand in the way; none where it was cancelled.
func (c *chooser) conflict(ctx context.Context) (out []BrokenLimit) {
	by, of := c.shelf.Broken(ctx, conflictCombinations)
	if ctx.Err() != nil {
		return nil
	}
	for i, n := range by {
		if n > 0 {
			out = append(out, BrokenLimit{LimitName(&c.doc.Search.Limits[i]), Number(float64(n) / float64(of))})
		}
	}
	return out
}
