package worker

import (
	"context"
	"encoding/json"
	"errors"
	"math"
	"sync"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Pool is workers that make calls; see [toewright/wasm.Pool].
type Pool interface {
	Call(ctx context.Context, method string, params any, progress func(json.RawMessage)) (json.RawMessage, error)
	// Size is the most calls that are made at once.
	Size() int
}

// Team makes calls in a pool and divides those that can be among all its workers.
type Team struct{ Pool }

// Call makes a call about a study with its options, of the engine's type for it, and returns
// its answer: JSON, or bytes for [Numbers]. Progress, which may be nil, hears of all workers
// together and must return soon. When ctx is cancelled it returns the best so far, or an
// error that is a [context.Canceled].
func (t Team) Call(ctx context.Context, method string, d *study.Document, options any, progress func(engine.Progress)) (json.RawMessage, error) {
	p, err := newParams(d, options)
	if err != nil {
		return nil, err
	}
	n := t.Size()
	if n < 2 || divided[method] == nil {
		return t.Pool.Call(ctx, method, p, listener(progress))
	}
	all := &together{tell: progress, each: make([]engine.Progress, n)}
	for range rounds(method) {
		parts, err := t.share(ctx, method, p, n, all)
		if err != nil {
			return nil, err
		}
		if join := joined[method]; join != nil {
			return join(d, parts), ctx.Err()
		}
		p.Parts = append(p.Parts, parts)
		if ctx.Err() != nil {
			p.Stopped, ctx = true, context.WithoutCancel(ctx)
			break
		}
	}
	return t.Pool.Call(ctx, method, p, listener(all.last()))
}

func newParams(d *study.Document, options any) (p params, err error) {
	if p.Study, err = json.Marshal(d); err != nil {
		return p, err
	}
	if p.Options = json.RawMessage("{}"); options != nil {
		p.Options, err = json.Marshal(options)
	}
	return p, err
}

// share has all shards of a call done and returns what came of each. Where one fails the
// others are called off.
func (t Team) share(ctx context.Context, method string, p params, n int, all *together) ([]json.RawMessage, error) {
	run, cancel := context.WithCancel(ctx)
	defer cancel()
	parts, errs := make([]json.RawMessage, n), make([]error, n)
	var wg sync.WaitGroup
	for i := range n {
		q := p
		q.Shard = engine.Shard{Index: i, Of: n}
		wg.Go(func() {
			if parts[i], errs[i] = t.Pool.Call(run, method, q, all.listener(i)); errs[i] != nil {
				cancel()
			}
		})
	}
	wg.Wait()
	return parts, fault(errs, parts)
}

// fault returns why a call has no answer: that of the shard that failed by itself or, where
// it was cancelled, that before any shard had found something.
func fault(errs []error, parts []json.RawMessage) (cancelled error) {
	some := false
	for i, err := range errs {
		switch {
		case err == nil:
			some = true
		case !errors.Is(err, context.Canceled):
			return err
		default:
			parts[i], cancelled = nil, err
		}
	}
	if some {
		return nil
	}
	return cancelled
}

// listener reads reports of progress for tell; nil for nobody.
func listener(tell func(engine.Progress)) func(json.RawMessage) {
	if tell == nil {
		return nil
	}
	return func(raw json.RawMessage) {
		var p engine.Progress
		if json.Unmarshal(raw, &p) == nil {
			tell(p)
		}
	}
}

// together is the progress of all shards of a call.
type together struct {
	tell func(engine.Progress)
	mu   sync.Mutex
	each []engine.Progress
}

// listener hears of shard i, and tells of all.
func (t *together) listener(i int) func(json.RawMessage) {
	if t.tell == nil {
		return nil
	}
	return listener(func(p engine.Progress) {
		t.mu.Lock()
		t.each[i] = p
		sum := t.sum()
		t.mu.Unlock()
		t.tell(sum)
	})
}

// last returns who hears of the answer, which goes on from what all shards have done and from
// their designs; nil for nobody.
func (t *together) last() func(engine.Progress) {
	if t.tell == nil {
		return nil
	}
	sum := t.sum()
	return func(p engine.Progress) {
		p.Fraction, p.Designs = max(p.Fraction, sum.Fraction), engine.JoinDesigns(sum.Designs, p.Designs)
		t.tell(p)
	}
}

// sum returns the progress of all: the mean of what is done, the best of the best, and the
// designs that none of the others' is better than.
func (t *together) sum() (out engine.Progress) {
	none := true
	var designs []*engine.TradeOffResult
	for _, p := range t.each {
		designs = append(designs, p.Designs)
		out.Fraction += p.Fraction / float64(len(t.each))
		out.Evaluations += p.Evaluations
		if p.Evaluations > 0 && p.Best.Valid() && (none || p.Best < out.Best) {
			none, out.Best, out.Values = false, p.Best, p.Values
		}
	}
	out.Designs = engine.JoinDesigns(designs...)
	if none {
		out.Best = engine.Number(math.NaN())
	}
	return out
}
