package engine

import (
	"cmp"
	"context"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// TradeOffRun is a trade-off whose searches can be made in shards: those of its ends and,
// once these are known, those from the spread starts of the levels between.
type TradeOffRun struct {
	*searcher
	aim      *secondAim
	levels   int
	settings *optimize.Settings
	soFar    *TradeOffResult
}

// Shares of the progress at which the ends of a trade-off in shards are known, and the levels'
// spread starts: what is left then is a fifth of the work.
const endsShare, levelsShare = 0.3, 0.8

// NewTradeOffRun checks a study's trade-off.
func NewTradeOffRun(d *study.Document, o TradeOffOptions) (*TradeOffRun, error) {
	so := SearchOptions{Side: o.Side, Seed: o.Seed, TargetOf: o.TargetOf, TargetSlope: o.TargetSlope}
	s, err := newSearcher(d, &so)
	if err != nil {
		return nil, err
	}
	r := &TradeOffRun{searcher: s}
	if r.levels, err = counted("designs", o.Designs, DefaultDesigns, 2, maxDesigns); err != nil {
		return nil, err
	}
	if r.aim, err = s.aim(&o); err != nil {
		return nil, err
	}
	if o.Progress != nil {
		so.Progress = func(p Progress) {
			p.Designs = r.soFar
			o.Progress(p)
		}
	}
	r.settings = s.settings(&so)
	return r, nil
}

// tradeOff returns the trade-off of package optimize.
func (r *TradeOffRun) tradeOff(known *optimize.FrontSearches) *optimize.TradeOff {
	t := &optimize.TradeOff{
		ToeSearch: r.problem, Aim: r.aim.Aim, Levels: r.levels,
		Found: func(front []optimize.Design) { r.soFar = r.found(front, true) },
	}
	if known != nil {
		t.Known = *known
	}
	return t
}

// Variables returns how many the search has.
func (r *TradeOffRun) Variables() int { return len(r.problem.Free) }

// Ends makes a shard's searches of the ends, fewer where the context ends.
func (r *TradeOffRun) Ends(ctx context.Context, s Shard) (optimize.FrontSearches, error) {
	found, err := r.tradeOff(nil).PolishEnds(ctx, r.settings.Within(0, endsShare), s.Index, s.Of)
	return found, explain(err, "")
}

// Levels makes a shard's searches of the levels, those of all ends known.
func (r *TradeOffRun) Levels(ctx context.Context, s Shard, ends *optimize.FrontSearches) ([]optimize.LevelSearch, error) {
	list, err := r.tradeOff(ends).PolishLevels(ctx, r.settings.Within(endsShare, levelsShare), s.Index, s.Of)
	return list, explain(err, "")
}

// Result makes the searches that are not known yet, and answers. Known may be nil.
func (r *TradeOffRun) Result(ctx context.Context, known *optimize.FrontSearches) (*TradeOffResult, error) {
	settings := r.settings
	if known != nil {
		settings = settings.Within(levelsShare, 1)
	}
	front, err := r.tradeOff(known).Front(ctx, settings)
	if err != nil {
		return nil, explain(err, "")
	}
	if len(front) == 0 {
		can, _, err := r.feasible(ctx, settings)
		if err != nil {
			return nil, err
		}
		return nil, r.noAnswer(ctx, can)
	}
	return r.found(front, ctx.Err() != nil), nil
}

// found returns the result of a front; stopped says that there is more to be found.
func (r *TradeOffRun) found(front []optimize.Design, stopped bool) *TradeOffResult {
	out := &TradeOffResult{
		Units: r.doc.Units, Minimise: r.problem.Measure.String(), Side: sideNames[r.problem.Judge],
		Aim: r.aim.Name, AimUnit: r.aim.unit, Goal: r.aim.goal, Stopped: stopped,
	}
	for _, k := range front {
		values := r.values(k.Values)
		out.Designs = append(out.Designs, TradeOffPoint{
			Values: values, Loads: r.peaks(values, solver.HoldAll), Scored: Scored{toeFigures(k.Best), degrees(k.Value)}, Aim: Number(r.aim.shown(k.Aim)),
		})
	}
	return out
}

// JoinDesigns returns the undominated designs of several trade-offs of one study that still
// run, from the least toe change on; nil where there are none.
func JoinDesigns(parts ...*TradeOffResult) *TradeOffResult {
	var out *TradeOffResult
	var all []TradeOffPoint
	for _, p := range parts {
		if p != nil {
			head := *p
			out, all = &head, append(all, p.Designs...)
		}
	}
	if out == nil {
		return nil
	}
	slices.SortStableFunc(all, func(a, b TradeOffPoint) int {
		return cmp.Or(cmp.Compare(a.Score, b.Score), cmp.Compare(a.Aim, b.Aim))
	})
	out.Designs = nil
	for _, p := range all {
		if n := len(out.Designs); n == 0 || p.Aim < out.Designs[n-1].Aim {
			out.Designs = append(out.Designs, p)
		}
	}
	return out
}
