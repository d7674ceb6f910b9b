package shards

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
	"toewright/optimize"
	"toewright/optimize/nlp"
)

// searchJob searches from many starts.
type searchJob struct {
	run   *engine.SearchRun
	known []nlp.Polished
	tried []optimize.GridTried
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
	if err != nil {
		return nil, err
	}
	tried, err := j.run.TryGrids(ctx, s)
	return polished{list, tried}, err
}

// polished is the result of a shard.
type polished struct {
	Polished []nlp.Polished       `json:"polished"`
	Tried    []optimize.GridTried `json:"tried,omitzero"`
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
	for i := range p.Tried {
		if t := &p.Tried[i]; t.Part != s.Index || t.Of != s.Of {
			return fmt.Errorf("result.tried.%d: part %d of %d, want its shard's", i, t.Part, t.Of)
		}
		for _, pt := range p.Tried[i].Points {
			if pt.Number < 0 || pt.Number%s.Of != s.Index {
				return fmt.Errorf("result.tried.%d: point %d, want those of its shard", i, pt.Number)
			}
		}
	}
	j.known, j.tried = append(j.known, p.Polished...), append(j.tried, p.Tried...)
	return nil
}

// Answer implements [Job].
func (j *searchJob) Answer(ctx context.Context) (any, error) {
	return j.run.Result(ctx, j.known, j.tried)
}
