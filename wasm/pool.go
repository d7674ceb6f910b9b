package wasm

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"sync"
)

// Pool is a set of workers that are started when they are needed. It is safe for
// concurrent use.
type Pool struct {
	spawn spawner
	size  int

	mu      sync.Mutex
	workers []*worker
}

// spawner starts a worker. What the worker sends goes to receive; failed is
// called when it has ended by itself.
type spawner func(receive func(message), failed func(error)) (link, error)

// link is the page's end of a worker.
type link interface {
	port
	end() // stops the worker at once
}

// worker is a running worker and the calls it has.
type worker struct {
	*client
	link link
}

// newPool returns a pool of at most size workers, at least one. It starts none.
func newPool(size int, spawn spawner) *Pool {
	return &Pool{spawn: spawn, size: max(size, 1)}
}

// Size returns the most workers that the pool has at once, into which bulk work is
// worth dividing.
func (p *Pool) Size() int { return p.size }

// Call runs a method in a worker and waits for its answer. Params is anything
// that encodes as JSON. Progress, if not nil, gets the reports on the way; it
// must return soon and must not call the pool.
//
// When ctx is cancelled the method is asked to end, and Call returns what it
// answers: its best so far, or an error that is a [context.Canceled]. If the
// worker crashes the error is an [ErrWorkerEnded]; the next call starts another.
func (p *Pool) Call(ctx context.Context, method string, params any, progress func(json.RawMessage)) (json.RawMessage, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	body, err := json.Marshal(params)
	if err != nil {
		return nil, fmt.Errorf("wasm: params of %s: %w", method, err)
	}
	w, err := p.pick()
	if err != nil {
		return nil, err
	}
	result, err := w.call(ctx, method, body, progress)
	if errors.Is(err, errStuck) {
		w.stop()
	}
	return result, err
}

// Close ends all workers; their calls fail. The pool can be used again.
func (p *Pool) Close() {
	p.mu.Lock()
	workers := p.workers
	p.workers = nil
	p.mu.Unlock()
	for _, w := range workers {
		w.stop()
	}
}

// pick returns the worker with the fewest calls, a new one if all are busy and
// there is room.
func (p *Pool) pick() (*worker, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	best, least := p.leastBusy()
	if best != nil && (least == 0 || len(p.workers) >= p.size) {
		return best, nil
	}
	w, err := p.start()
	if err != nil {
		return nil, fmt.Errorf("wasm: starting a worker: %w", err)
	}
	p.workers = append(p.workers, w)
	return w, nil
}

// leastBusy drops the workers that have ended and returns the one of the others
// with the fewest calls, nil if there are none.
func (p *Pool) leastBusy() (best *worker, least int) {
	var alive []*worker
	for _, w := range p.workers {
		calls, ok := w.load()
		if !ok {
			continue
		}
		alive = append(alive, w)
		if best == nil || calls < least {
			best, least = w, calls
		}
	}
	p.workers = alive
	return best, least
}

func (p *Pool) start() (*worker, error) {
	w := &worker{client: newClient(nil)}
	link, err := p.spawn(w.receive, w.fail)
	if err != nil {
		return nil, err
	}
	w.link, w.port = link, link
	return w, nil
}

// stop ends the worker and fails its calls.
func (w *worker) stop() {
	w.fail(ErrWorkerEnded)
	w.link.end()
}
