package engine

import (
	"fmt"

	"toewright/optimize"
)

// settlesNothing is what readings leave of the standard deviation of the advised value
// from which on they are said to settle nothing of it.
const settlesNothing = 0.95

// fewestAlike is how many readings of a run that are the same figure at travels of their
// own no wheel is likely to give: of fewer a gauge's last digit may make one.
const fewestAlike = 4

// saysNothing says which readings settle nothing of advice, and why; nil where all do.
func (f *fitter) saysNothing(a *optimize.Advice) []string {
	var out []string
	for _, side := range a.Sides {
		if f.car.Learnt(a) > settlesNothing {
			out = append(out, fmt.Sprintf("the readings of the %s side settle nothing: the advice is that for the car as filed; read at the ends of the travel, and with another stack of spacers", side))
		}
	}
	for i := range f.problem.Sets {
		s := &f.problem.Sets[i]
		if a.For(s.Side) && s.Alike() && travelsOf(s) >= fewestAlike {
			out = append(out, fmt.Sprintf("all readings of set %d (%s) are %s: they settle nothing until the gauge is seen to move with the wheel; read them again",
				f.places[i]+1, s.Side, f.say(f.length(s.Readings[0].Value))))
		}
	}
	return out
}

// travelsOf returns the number of different travels of a set.
func travelsOf(s *optimize.ReadingSet) int {
	seen := map[float64]bool{}
	for _, r := range s.Readings {
		seen[r.Travel] = true
	}
	return len(seen)
}
