package optimize

import (
	"context"

	"toewright/optimize/nlp"
)

// FrontSearches are local searches of a trade-off that do not depend on one another, so that
// other processes may have made them: those of its ends and, once these are known, those from
// the spread starts of the levels between.
type FrontSearches struct {
	Toe    []nlp.Polished `json:"toe,omitzero"` // of the least toe change
	Aim    []nlp.Polished `json:"aim,omitzero"` // of the least of the second aim
	Levels []LevelSearch  `json:"levels,omitzero"`
}

// LevelSearch is where a local search from a spread start ended.
type LevelSearch struct {
	Start       int       `json:"start"` // its number among those of all levels
	X           []float64 `json:"x"`     // nil where the model cannot be evaluated at its start
	Value       float64   `json:"value"`
	Violation   float64   `json:"violation"`
	Evaluations int       `json:"evaluations"`
}

// PolishEnds makes those local searches of both ends of [TradeOff.Front] that are part i of n
// of them: those that it has made where the context ends.
func (t *TradeOff) PolishEnds(ctx context.Context, s *Settings, i, n int) (out FrontSearches, err error) {
	f, err := newFront(ctx, t, s)
	if err != nil {
		return out, err
	}
	w := f.worker
	var last Progress // of the toe, which is what is told
	polish := func(m nlp.Model, o nlp.Objective, half float64, toe bool) ([]nlp.Polished, error) {
		p, set := f.problem(m), f.settings
		p.Objective = o
		set.Progress = func(now Progress) {
			if now.Fraction = half + now.Fraction/2; !toe {
				now.Best, now.Evaluations = last.Best, last.Evaluations+now.Evaluations
			} else {
				last = now
			}
			now.X = nil
			f.settings.Progress(now)
		}
		return nlp.Polish(ctx, p, &set, i, n)
	}
	if out.Toe, err = polish(w.toe, f.objective(), 0, true); err != nil {
		return out, err
	}
	out.Aim, err = polish(w.aim, w.aim.objective(), 0.5, false)
	return out, err
}

// PolishLevels makes those local searches from the spread starts of the levels that are part i
// of n of them, from ends that are known: those that it has made where the context ends.
func (t *TradeOff) PolishLevels(ctx context.Context, s *Settings, i, n int) (list []LevelSearch, err error) {
	f, err := newFront(ctx, t, s)
	if err != nil {
		return nil, err
	}
	if _, err := f.ends(); err != nil || len(f.levels) < 2 {
		return nil, err
	}
	last := len(f.levels) - 1
	for k := range last {
		f.fraction = float64(k+1) / float64(last+1)
		if k == 0 && f.fixedBy(f.levels[0].at) != nil {
			continue
		}
		for _, from := range f.draw() {
			if from.n%n == i && ctx.Err() == nil {
				list = f.polish(k, from, list)
			}
		}
	}
	return list, nil
}

// polish makes a search of a level, and adds it to the list where it can be written as JSON.
func (f *front) polish(k int, from levelStart, list []LevelSearch) []LevelSearch {
	o, n, ok := f.from(&f.levels[k], from)
	f.spent += n
	found := LevelSearch{Start: from.n, Evaluations: n}
	if ok {
		found.X, found.Value, found.Violation = o.X, o.Value, o.Violation
	}
	if ok && !(o.Violation > nlp.LimitSlack) {
		f.add(k, o)
	}
	f.tellProgress(0, 0)
	if f.ctx.Err() != nil || !nlp.AllFinite([]float64{found.Value, found.Violation}) {
		return list
	}
	return append(list, found)
}
