package shards

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"toewright/internal/engine"
	"toewright/optimize"
)

// tradeOffJob makes the searches of a trade-off, in two rounds: those of the levels start from
// what the ends are.
type tradeOffJob struct {
	run   *engine.TradeOffRun
	known *optimize.FrontSearches // nil before any was added
}

// TradeOff is the [Start] of that call. What its shards leave is searched by the answer, so
// that any of them may be stopped. A job to which shards were added does the second round.
func TradeOff(r Run) (Job, error) {
	o := engine.TradeOffOptions{Progress: r.Progress}
	if err := Strict(r.Options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewTradeOffRun(r.Study, o)
	if err != nil {
		return nil, err
	}
	return &tradeOffJob{run: run}, nil
}

// Do implements [Job].
func (j *tradeOffJob) Do(ctx context.Context, s engine.Shard) (any, error) {
	if j.known == nil {
		return j.run.Ends(ctx, s)
	}
	list, err := j.run.Levels(ctx, s, j.known)
	return optimize.FrontSearches{Levels: list}, err
}

// Add implements [Job].
func (j *tradeOffJob) Add(s engine.Shard, raw json.RawMessage) error {
	var p optimize.FrontSearches
	if err := Strict(raw, &p); err != nil {
		return err
	}
	check := func(key string, i, start int, x []float64) error {
		if start < 0 || start%s.Of != s.Index || x != nil && len(x) != j.run.Variables() {
			return fmt.Errorf("result.%s.%d: a search from start %d over %d variables, want one of its shard over %d", key, i, start, len(x), j.run.Variables())
		}
		return nil
	}
	for i, k := range slices.Concat(p.Toe, p.Aim) {
		if err := check("ends", i, k.Start, k.U); err != nil {
			return err
		}
	}
	for i, k := range p.Levels {
		if err := check("levels", i, k.Start, k.X); err != nil {
			return err
		}
	}
	if j.known == nil {
		j.known = &optimize.FrontSearches{}
	}
	j.known.Toe = append(j.known.Toe, p.Toe...)
	j.known.Aim = append(j.known.Aim, p.Aim...)
	j.known.Levels = append(j.known.Levels, p.Levels...)
	return nil
}

// Answer implements [Job].
func (j *tradeOffJob) Answer(ctx context.Context) (any, error) { return j.run.Result(ctx, j.known) }
