package optimize

import (
	"context"
	"math"
)

// Design is one design of a trade-off.
type Design struct {
	Values []float64
	Best   Figures
	Aim    float64 // value of the second aim
}

// TradeOff asks for designs between the least toe change and the least of a
// second aim, such as the distance from the stock part or the Ackermann error.
type TradeOff struct {
	ToeSearch
	// Aim is the second aim, to be kept small; its bounds are not used.
	Aim    Limit
	Levels int // designs asked for, at least 2
}

// Front returns undominated designs in the order of the second aim: the search
// repeated with the aim held below each of some levels, from that of the least
// toe change down to the least that the aim comes to. A cancelled context ends it
// early with the designs found so far.
func (t *TradeOff) Front(ctx context.Context, s *Settings) ([]Design, error) {
	if t.Levels < 2 {
		return nil, problemErrorf("a trade-off of %d designs; at least 2 are needed", t.Levels)
	}
	searches := t.Levels + 1 // the second looks for the least of the aim
	first, err := t.design(ctx, s.part(0, searches), math.Inf(1))
	if err != nil || first == nil {
		return nil, err
	}
	low, err := t.leastAim(ctx, s.part(1, searches), first.Aim)
	if err != nil {
		return nil, err
	}
	front := []Design{*first}
	for k := 1; k < t.Levels && ctx.Err() == nil; k++ {
		level := first.Aim + (low-first.Aim)*float64(k)/float64(t.Levels-1)
		d, err := t.design(ctx, s.part(k+1, searches), level)
		if err != nil {
			return nil, err
		}
		if d != nil && d.Aim < front[len(front)-1].Aim-limitSlack*t.Aim.Scale {
			front = append(front, *d)
		}
	}
	return front, nil
}

// part returns settings of which progress is that of search k of n.
func (s *Settings) part(k, n int) *Settings {
	if s == nil || s.Progress == nil {
		return s
	}
	out := *s
	out.Progress = func(p Progress) {
		p.Fraction = (float64(k) + p.Fraction) / float64(n)
		s.Progress(p)
	}
	return &out
}

// design searches with the aim held at most at level; nil where none is found.
func (t *TradeOff) design(ctx context.Context, s *Settings, level float64) (*Design, error) {
	p := t.ToeSearch
	aim := t.Aim
	aim.Min, aim.Max = math.Inf(-1), level
	if !math.IsInf(level, 1) {
		p.Limits = append(append([]Limit(nil), p.Limits...), aim)
	}
	a, err := SearchToe(ctx, &p, s)
	if err != nil || a.Values == nil || a.Result.Status == Infeasible {
		return nil, err
	}
	return &Design{Values: a.Values, Best: a.Best, Aim: t.aimAt(a.Values)}, nil
}

// aimAt returns the aim of the first scenario's car at x.
func (t *TradeOff) aimAt(x []float64) float64 {
	m := newToeModel(&t.ToeSearch)
	car, err := m.base.Assemble(m.changes(&m.scenarios[0], x), m.scenarios[0].Hold)
	if err != nil {
		return math.NaN()
	}
	return t.Aim.Of(car, m.ws)
}

// leastAim returns the least that the aim comes to: a search that cannot hold an
// aim far below it ends at the design that breaks it least.
func (t *TradeOff) leastAim(ctx context.Context, s *Settings, from float64) (float64, error) {
	p := t.ToeSearch
	aim := t.Aim
	aim.Min, aim.Max = math.Inf(-1), from-unreachable*t.Aim.Scale
	p.Limits = append(append([]Limit(nil), p.Limits...), aim)
	a, err := SearchToe(ctx, &p, s)
	if err != nil {
		return 0, err
	}
	if a.Values == nil {
		return from, nil
	}
	return t.aimAt(a.Values), nil
}

// unreachable is how many of its scales an aim is asked to come down by, which
// none can.
const unreachable = 1e6
