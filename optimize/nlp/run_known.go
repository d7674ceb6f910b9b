package nlp

import (
	"context"
	"slices"
)

// Polished is where one of the local searches of a run ended, so that another process may
// have made it.
type Polished struct {
	Start       int       `json:"start"` // where it began: 0 at the problem's start, i at spread point i-1
	U           []float64 `json:"u"`     // in the unit box; nil where the model cannot be evaluated at its start
	Began       float64   `json:"began"` // objective at its start
	Value       float64   `json:"value"` // and where it ended
	Violation   float64   `json:"violation"`
	Broken      bool      `json:"broken"` // a limit
	Status      Status    `json:"status"`
	Evaluations int       `json:"evaluations"` // of the model
}

// local returns what the run takes of a search that is known.
func (k *Polished) local() local {
	return local{u: slices.Clone(k.U), began: k.Began, value: k.Value, violation: k.Violation, broken: k.Broken, status: k.Status}
}

// finite reports whether a search can be written as JSON.
func (k *Polished) finite() bool { return AllFinite([]float64{k.Began, k.Value, k.Violation}) }

// Polish makes those local searches of a run that are part i of n of them, for
// [Settings.Known]: [Run] then answers as if it had made them itself. It returns those that
// it has made where the context ends.
func Polish(ctx context.Context, p Problem, s *Settings, i, n int) (list []Polished, err error) {
	r, err := prepare(ctx, &p, s)
	if err != nil {
		return nil, err
	}
	mine := (r.settings.Restarts - i + n - 1) / n
	r.fraction = func() float64 { return float64(len(list)) / float64(max(mine, 1)) }
	points, u := NewHalton(len(p.Variables), r.settings.Seed), p.unitStart()
	for start := i; start < r.settings.Restarts && ctx.Err() == nil; start += n {
		if start > 0 {
			points.Point(start-1, u)
		}
		k := Polished{Start: start}
		before := r.box.count
		if r.polish(start, u) {
			l := r.found[len(r.found)-1]
			k.U, k.Began, k.Value, k.Violation, k.Broken, k.Status = l.u, l.began, l.value, l.violation, l.broken, l.status
		}
		if k.Evaluations = r.box.count - before; ctx.Err() == nil && k.finite() {
			list = append(list, k)
		}
	}
	return list, nil
}
