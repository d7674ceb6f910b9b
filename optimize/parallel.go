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

// inChunks runs do for the items 0 to n in chunks and hands the results to join
// in the order of the items. It ends early, at the end of an unbroken run of
// chunks, where the context ends or do fails.
func inChunks[T any](ctx context.Context, p *Parallel, n, chunk int, do func(ctx context.Context, first, end int) (T, error), join func(T)) error {
	chunk = p.chunk(chunk)
	count := (n + chunk - 1) / chunk
	r := &chunkRun[T]{p: p, n: n, chunk: chunk, do: do, parts: make([]chunkPart[T], count)}
	var wg sync.WaitGroup
	for range min(p.workers(), count) {
		wg.Go(func() { r.work(ctx) })
	}
	wg.Wait()
	for i := range r.parts {
		if err := r.parts[i].err; err != nil {
			return err
		}
		if !r.parts[i].done {
			break
		}
		join(r.parts[i].value)
	}
	return nil
}

// chunkRun is what the goroutines of a run share.
type chunkRun[T any] struct {
	p        *Parallel
	n, chunk int
	do       func(ctx context.Context, first, end int) (T, error)
	parts    []chunkPart[T]

	mu     sync.Mutex
	next   int // chunk to be taken next
	items  int // done
	failed bool
}

type chunkPart[T any] struct {
	value T
	err   error
	done  bool
}

// work takes chunks until there are none.
func (r *chunkRun[T]) work(ctx context.Context) {
	for {
		i, ok := r.take(ctx)
		if !ok {
			return
		}
		first, end := i*r.chunk, min((i+1)*r.chunk, r.n)
		part := &r.parts[i]
		part.value, part.err = r.do(ctx, first, end)
		part.done = true
		r.finish(part.err, end-first)
	}
}

func (r *chunkRun[T]) take(ctx context.Context) (int, bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.failed || r.next == len(r.parts) || ctx.Err() != nil {
		return 0, false
	}
	r.next++
	return r.next - 1, true
}

func (r *chunkRun[T]) finish(err error, items int) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.failed = r.failed || err != nil
	r.items += items
	if r.p.Progress != nil {
		r.p.Progress(r.items)
	}
}

// Chunks of some ten milliseconds' work: long beside the cost of taking one,
// short beside a reader's patience.
const (
	sampleChunk = 256 // cars
	shelfChunk  = 512 // combinations
	mapChunk    = 4   // rows
)

// SampleAll builds the first cars of the series on all processors.
func (s *Series) SampleAll(ctx context.Context, cars int, p Parallel) (*Sample, error) {
	out := &Sample{width: len(s.bench().change)}
	err := inChunks(ctx, &p, cars, sampleChunk, s.Sample, out.Join)
	return out, err
}

// TryAll tries all combinations of the shelf on all processors.
func (s *Shelf) TryAll(ctx context.Context, p Parallel) (*Choices, error) {
	n, err := s.Combinations()
	if err != nil {
		return nil, err
	}
	out := &Choices{}
	err = inChunks(ctx, &p, n, shelfChunk, s.Try, func(c *Choices) { out.Join(s.Measure, c) })
	return out, err
}

// FillAll returns the figures of the whole map, row after row, on all processors.
// A cancelled context ends it early: the result then has fewer rows.
func (m *ParameterMap) FillAll(ctx context.Context, p Parallel) ([]Figures, error) {
	if err := m.Check(); err != nil {
		return nil, err
	}
	var out []Figures
	err := inChunks(ctx, &p, m.Rows, mapChunk, m.Fill, func(f []Figures) { out = append(out, f...) })
	return out, err
}
