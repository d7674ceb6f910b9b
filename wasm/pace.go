package wasm

import (
	"context"
	"sync/atomic"
	"time"
)

// yieldInterval is how long a method may hold the worker's thread before the
// event loop gets a turn. A yield costs about 50 us, so this loses 0.2 %, and a
// cancel waits too short a time to be felt.
const yieldInterval = 30 * time.Millisecond

// pacer calls yield when the interval has gone by since it last did.
type pacer struct {
	yield func()
	last  atomic.Int64 // time of the last yield, ns since start
	start time.Time
}

func newPacer(yield func()) *pacer {
	return &pacer{yield: yield, start: time.Now()}
}

// pause yields if it is time to.
func (p *pacer) pause() {
	now := int64(time.Since(p.start))
	last := p.last.Load()
	if now-last < int64(yieldInterval) || !p.last.CompareAndSwap(last, now) {
		return
	}
	p.yield()
	p.last.Store(int64(time.Since(p.start)))
}

// pacedContext lets the event loop turn when it is asked whether to stop.
type pacedContext struct {
	context.Context
	pacer *pacer
}

func (c pacedContext) Err() error {
	c.pacer.pause()
	return c.Context.Err()
}

func (c pacedContext) Done() <-chan struct{} {
	c.pacer.pause()
	return c.Context.Done()
}
