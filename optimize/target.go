package optimize

import (
	"math"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Target is a wanted toe change against travel: linear between its points and
// constant beyond them. The zero value is flat.
type Target struct {
	Travel []float64      // mm, ascending
	Change []solver.Angle // of the toe from that at travel 0
}

// Check returns an error where the points do not make a function of travel.
func (t *Target) Check() error {
	if len(t.Travel) != len(t.Change) {
		return nlp.ProblemErrorf("target has %d travels and %d changes", len(t.Travel), len(t.Change))
	}
	for i, x := range t.Travel {
		if math.IsNaN(x) || math.IsNaN(float64(t.Change[i])) {
			return nlp.ProblemErrorf("target point %d is not a number", i+1)
		}
		if i > 0 && !(x > t.Travel[i-1]) {
			return nlp.ProblemErrorf("target travels must ascend: %.6g mm follows %.6g mm", x, t.Travel[i-1])
		}
	}
	return nil
}

// At returns the wanted toe change at a travel in mm.
func (t *Target) At(travel float64) solver.Angle {
	if len(t.Travel) == 0 {
		return 0
	}
	i, _ := slices.BinarySearch(t.Travel, travel)
	switch i {
	case 0:
		return t.Change[0]
	case len(t.Travel):
		return t.Change[i-1]
	}
	x0, x1 := t.Travel[i-1], t.Travel[i]
	u := (travel - x0) / (x1 - x0)
	return t.Change[i-1] + solver.Angle(u)*(t.Change[i]-t.Change[i-1])
}
