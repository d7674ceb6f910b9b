package api

import (
	"context"
	"errors"
	"sync/atomic"
)

var (
	errFull     = errors.New("too many calls wait already; try again in a moment")
	errStopping = errors.New("the server is stopping")
)

// gate lets a few calls run at once and some more wait for them.
type gate struct {
	slots    chan struct{}
	waiting  atomic.Int64
	queue    int64
	stopping <-chan struct{} // nil never stops
}

func newGate(workers, queue int, stopping <-chan struct{}) *gate {
	return &gate{slots: make(chan struct{}, workers), queue: int64(queue), stopping: stopping}
}

// enter returns when the call may run, and what to call once it has. It returns
// errFull where too many wait, errStopping where the server stops first and the
// context's error where that ends first.
func (g *gate) enter(ctx context.Context) (leave func(), err error) {
	leave = func() { <-g.slots }
	if g.stopped() {
		return nil, errStopping
	}
	select {
	case g.slots <- struct{}{}:
		return leave, nil
	default:
	}
	defer g.waiting.Add(-1)
	if g.waiting.Add(1) > g.queue {
		return nil, errFull
	}
	return g.await(ctx)
}

// await is [gate.enter] for who waits anyway, one call after the other: it is never full.
func (g *gate) await(ctx context.Context) (leave func(), err error) {
	select {
	case g.slots <- struct{}{}:
		return func() { <-g.slots }, nil
	case <-g.stopping:
		return nil, errStopping
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// full reports whether a call that came now would be refused.
func (g *gate) full() bool { return g.waiting.Load() >= g.queue && len(g.slots) == cap(g.slots) }

func (g *gate) stopped() bool {
	select {
	case <-g.stopping:
		return true
	default:
		return false
	}
}

// running returns how many calls run.
func (g *gate) running() int { return len(g.slots) }
