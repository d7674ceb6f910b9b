package optimize

import (
	"context"
	"runtime"
	"sync"
)

// Parallel says how a run of independent cars is divided. The result does not
// depend on it. The zero value uses all processors.
type Parallel struct {
	// Workers is how many goroutines work at once; 0 means one for each
	// processor that Go may use.
	Workers int
	// Chunk is how many items one goroutine takes at a time; 0 means the call's
	// own default.
	Chunk int
	// Progress, if not nil, is called after each chunk with the items done so
	// far, by one goroutine at a time; it must return soon.
	Progress func(done int)
}

func (p *Parallel) workers() int {
	if p.Workers > 0 {
		return p.Workers
	}
	return runtime.GOMAXPROCS(0)
}

func (p *Parallel) chunk(byDefault int) int {
	if p.Chunk > 0 {
		return p.Chunk
	}
	return byDefault
}

// Chunks of some milliseconds' work, or some tens where limits cost much: long beside the cost
// of taking one, short beside a reader's patience.
const (
	seriesChunk = 256 // cars
	shelfChunk  = 64  // combinations
	mapChunk    = 4   // rows
)

// cancelEvery is the number of cars, some 20 µs each, between looks at the context.
const cancelEvery = 64

// divide has the items of a span done in chunks. Each goroutine gets a worker of
// its own from start, which gathers what it finds: memory does not grow with the
// span. It returns the workers, for what they found to be joined. Which worker
// did what is chance, so that the joining must not depend on it. It ends early
// where the context does.
func divide[W any](ctx context.Context, p *Parallel, all Span, chunk int, start func() W, do func(W, context.Context, Span)) []W {
	d := &division{p: p, all: all, chunk: p.chunk(chunk)}
	workers := make([]W, min(p.workers(), d.chunks()))
	var wg sync.WaitGroup
	for i := range workers {
		w := start()
		workers[i] = w
		wg.Go(func() { d.work(ctx, func(s Span) { do(w, ctx, s) }) })
	}
	wg.Wait()
	return workers
}

// division is what the goroutines of a run share.
type division struct {
	p     *Parallel
	all   Span
	chunk int

	mu   sync.Mutex
	next int // chunk to be taken next
	done int // items
}

func (d *division) chunks() int { return (d.all.Len() + d.chunk - 1) / d.chunk }

// work takes chunks until there are none.
func (d *division) work(ctx context.Context, do func(Span)) {
	for ctx.Err() == nil {
		s := d.take()
		if s.Len() == 0 {
			return
		}
		do(s)
		d.finish(s.Len())
	}
}

func (d *division) take() Span {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.next++
	return d.all.chunk(d.next-1, d.chunk)
}

func (d *division) finish(items int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.done += items
	if d.p.Progress != nil {
		d.p.Progress(d.done)
	}
}
