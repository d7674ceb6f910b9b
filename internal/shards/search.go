package shards

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
	"toewright/optimize/nlp"
)

// searchJob searches from many starts.
type searchJob struct {
	run   *engine.SearchRun
	known []nlp.Polished
}

// Search is the [Start] of that call. What its shards leave is searched by the answer, so
// that any of them may be stopped.
func Search(r Run) (Job, error) {
	o := engine.SearchOptions{Progress: r.Progress}
	if err := Strict(r.Options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewSearchRun(r.Study, o)
	if err != nil {
		return nil, err
	}
	return &searchJob{run: run}, nil
}

// Do implements [Job].
func (j *searchJob) Do(ctx context.Context, s engine.Shard) (any, error) {
	list, err := j.run.Polish(ctx, s)
	return polished{list}, err
}

// polished is the result of a shard.
type polished struct {
	Polished []nlp.Polished `json:"polished"`
}

// Add implements [Job].
func (j *searchJob) Add(s engine.Shard, raw json.RawMessage) error {
	var p polished
	if err := Strict(raw, &p); err != nil {
		return err
	}
	for i, k := range p.Polished {
		if k.Start < 0 || k.Start%s.Of != s.Index || k.U != nil && len(k.U) != j.run.Variables() {
			return fmt.Errorf("result.polished.%d: a search from start %d over %d variables, want one of its shard over %d", i, k.Start, len(k.U), j.run.Variables())
		}
	}
	j.known = append(j.known, p.Polished...)
	return nil
}

// Answer implements [Job].
func (j *searchJob) Answer(ctx context.Context) (any, error) { return j.run.Result(ctx, j.known) }
