package optimize

import (
	"math"

	"toewright/solver"
)

// nowhere is said of a car that cannot be moved through the window.
var nowhere = Figures{solver.Angle(math.NaN()), solver.Angle(math.NaN())}

// baseFigures returns the figures of the base car, nothing searched for changed.
func (m *toeModel) baseFigures() Figures {
	base := *m
	base.free, base.seeds, base.limits = nil, nil, nil
	f, _ := base.figures(nil)
	return f
}
