package optimize

import (
	"context"
	"math"

	"toewright/optimize/nlp"
)

// frontWorker makes the local searches of a trade-off, in memory of its own.
type frontWorker struct {
	toe   *toeModel
	aim   *aimModel
	held  *heldModel
	local *nlp.LocalSearch
}

func newFrontWorker(ctx context.Context, t *TradeOff) (*frontWorker, error) {
	w := &frontWorker{toe: newToeModel(&t.ToeSearch)}
	w.aim = newAimModel(t, w.toe)
	w.held = newHeldModel(w.toe, w.aim, math.Inf(1))
	local, err := nlp.NewLocalSearch(ctx, t.problem(w.held), nil)
	w.local = local
	return w, err
}

// from returns where a local search from x ends with the aim held at most at a level,
// which a rounding below what counts as held leaves room, and its evaluations.
func (w *frontWorker) from(level float64, x []float64) (o nlp.Optimum, evaluations int, ok bool) {
	w.held.level = level/w.aim.aim.Scale + nlp.LimitSlack/2
	return w.local.From(x)
}

// design returns that of values with a value of the objective.
func (w *frontWorker) design(x []float64, value float64) *Design {
	d := &Design{Values: x, Value: value, Aim: w.aim.at(x)}
	d.Best, _ = w.toe.figures(x)
	return d
}
