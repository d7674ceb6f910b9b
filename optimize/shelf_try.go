package optimize

import (
	"context"

	"toewright/solver"
)

// Try tries the combinations of a span of numbers. A cancelled context ends it
// early with the best so far.
func (s *Shelf) Try(ctx context.Context, combinations Span, p Parallel) (*Choices, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if _, err := s.Combinations(); err != nil {
		return nil, err
	}
	start := func() *shelfWorker { return &shelfWorker{bench: s.benchFor(s.changedAlike()), s: s} }
	out := &Choices{}
	for _, w := range divide(ctx, &p, combinations, shelfChunk, start, (*shelfWorker).try) {
		out.Join(s, &w.found)
	}
	return out, nil
}

// shelfWorker tries combinations in memory of its own.
type shelfWorker struct {
	*bench
	s       *Shelf
	parts   []int
	changes []solver.Change
	effects []float64
	found   Choices
}

// try tries the combinations of a span, fewer where the context ends.
func (w *shelfWorker) try(ctx context.Context, combinations Span) {
	for n := combinations.First; n < combinations.End; n++ {
		if n%cancelEvery == 0 && ctx.Err() != nil {
			return
		}
		w.found.Tried++
		if w.parts = w.s.parts(w.parts[:0], n); !w.s.excluded(w.parts) {
			w.build(n)
		}
	}
}

// build assembles combination number n, moves it and offers it.
func (w *shelfWorker) build(n int) {
	w.changes = w.s.gather(w.changes[:0], w.parts)
	sides := selectionOf(w.sides)
	if len(w.s.Effects)+len(w.s.Limits) > 0 { // which may look at both
		sides = solver.BothSides
	}
	car, f := w.judgeSides(sides, w.changes)
	if car == nil {
		return
	}
	if !w.holds(car) {
		return
	}
	w.found.Built++
	w.effects = w.effects[:0]
	for _, e := range w.s.Effects {
		w.effects = append(w.effects, e.Of(car))
	}
	w.found.offer(w.s, &Choice{Number: n, Price: w.s.price(w.parts), Figures: f, Effects: w.effects})
}

// holds reports whether a car holds all limits of the shelf.
func (w *shelfWorker) holds(car *solver.Axle) bool {
	for i := range w.s.Limits {
		if !w.s.Limits[i].heldBy(car, w.From, w.ws) {
			return false
		}
	}
	return true
}

// Broken returns how many of at most so many combinations, evenly spread over all,
// break each limit, and of how many cars that go together and can be built: what
// stands in the way where no combination holds all limits.
func (s *Shelf) Broken(ctx context.Context, most int) (by []int, of int) {
	n, err := s.Combinations()
	if err != nil {
		return nil, 0
	}
	w := &shelfWorker{bench: s.bench(), s: s}
	by = make([]int, len(s.Limits))
	most = min(most, n)
	for k := range most {
		if ctx.Err() != nil {
			break
		}
		w.parts = s.parts(w.parts[:0], int(float64(k)/float64(most)*float64(n)))
		car, err := s.Base.Assemble(s.gather(nil, w.parts), s.Hold)
		if s.excluded(w.parts) || err != nil {
			continue
		}
		of++
		for i := range s.Limits {
			if !s.Limits[i].heldBy(car, w.From, w.ws) {
				by[i]++
			}
		}
	}
	return by, of
}
