package worker

import (
	"context"
	"encoding/json"
	"errors"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/shards"
	"toewright/internal/study"
	"toewright/wasm"
)

// errNoStudy is what a call without a study is refused with.
var errNoStudy = errors.New("worker: params have no study")

// params are what a method is called with: the study file and the options of the call as
// JSON. With a shard it does that part of a call that is divided, in the round after those whose
// parts are given, and with the parts of all rounds it answers the call.
type params struct {
	Study   json.RawMessage `json:"study"`
	Options json.RawMessage `json:"options,omitzero"`
	Shard   engine.Shard    `json:"shard,omitzero"`
	// Parts are of each round, by shard; null of one that has none.
	Parts   [][]json.RawMessage `json:"parts,omitzero"`
	Stopped bool                `json:"stopped,omitzero"` // the shards were stopped on the way
}

// Handlers returns the methods by their names: the calls that the page makes.
func Handlers() map[string]wasm.Handler {
	methods := map[string]wasm.Handler{}
	for _, c := range calls.OfPage() {
		methods[c.Name] = handler(c.New, divided[c.Name])
	}
	return methods
}

// handler makes a method of a call, of which request returns a new one and start, where it
// can be divided, a job.
func handler(request func() *calls.Request, start shards.Start) wasm.Handler {
	return func(ctx context.Context, raw json.RawMessage, progress func(any)) (any, error) {
		var p params
		if err := json.Unmarshal(raw, &p); err != nil {
			return nil, err
		}
		d, err := p.document()
		if err != nil {
			return nil, err
		}
		report := func(e engine.Progress) { progress(e) }
		var answer any
		if start != nil && (p.Shard.Of > 0 || p.Parts != nil) {
			answer, err = p.share(ctx, start, shards.Run{Study: d, Options: p.Options, Stopped: p.Stopped, Progress: report})
			err = engine.InUnits(err, d)
		} else {
			answer, err = p.whole(ctx, request(), d, report)
		}
		if numbers, ok := answer.([]float64); ok {
			return pack(numbers), err
		}
		return answer, err
	}
}

// document reads the study.
func (p *params) document() (*study.Document, error) {
	var d *study.Document
	err := json.Unmarshal(p.Study, &d)
	if err == nil && d == nil {
		err = errNoStudy
	}
	return d, err
}

// whole answers a call that is not divided.
func (p *params) whole(ctx context.Context, r *calls.Request, d *study.Document, report func(engine.Progress)) (any, error) {
	if p.Options != nil {
		if err := json.Unmarshal(p.Options, r.Values); err != nil { // goes where it points to
			return nil, err
		}
	}
	return r.Ask(ctx, d, report)
}

// share does a shard of a call, or answers it from the parts of all.
func (p *params) share(ctx context.Context, start shards.Start, run shards.Run) (any, error) {
	job, err := start(run)
	if err != nil {
		return nil, err
	}
	for _, round := range p.Parts {
		for i, part := range round {
			if string(part) == "null" {
				continue
			}
			if err := job.Add(engine.Shard{Index: i, Of: len(round)}, part); err != nil {
				return nil, err
			}
		}
	}
	if p.Shard.Of > 0 {
		return job.Do(ctx, p.Shard)
	}
	if p.Stopped {
		stopped, cancel := context.WithCancel(ctx)
		cancel()
		ctx = stopped
	}
	return job.Answer(ctx)
}
