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
			w.build(ctx, n)
		}
	}
}

// build assembles combination number n, moves it and offers it. Limits cost far more than
// the toe: they are judged only of what would be listed, while the context lasts.
func (w *shelfWorker) build(ctx context.Context, n int) {
	w.changes = w.s.gather(w.changes[:0], w.parts)
	sides := selectionOf(w.sides)
	if len(w.s.Effects) > 0 { // which may look at both
		sides = solver.BothSides
	}
	car, f := w.judgeSides(sides, w.changes)
	if car == nil {
		return
	}
	w.found.Built++
	w.effects = w.effects[:0]
	for _, e := range w.s.Effects {
		w.effects = append(w.effects, e.Of(car))
	}
	c := &Choice{Number: n, Price: w.s.price(w.parts), Figures: f, Effects: w.effects}
	if w.found.wants(w.s, c) && w.holds(ctx) {
		w.found.offer(w.s, c)
	}
}

// holds reports whether the combination at hand holds all limits of the shelf in all
// set-ups; that is not known where there are some and the context has ended.
func (w *shelfWorker) holds(ctx context.Context) bool {
	if len(w.s.Limits) == 0 {
		return true
	}
	if ctx.Err() != nil {
		return false
	}
	for _, up := range w.s.setUps() {
		car, err := w.Base.Assemble(append(w.changes[:len(w.changes):len(w.changes)], up.Changes...), up.Hold)
		if err != nil {
			return false
		}
		for i := range w.s.Limits {
			if !w.s.Limits[i].heldBy(car, up.From, w.ws) {
				return false
			}
		}
	}
	return true
}

// setUps returns those in which limits are held.
func (s *Shelf) setUps() []Scenario {
	if len(s.SetUps) > 0 {
		return s.SetUps
	}
	return []Scenario{{Hold: s.Hold, From: s.From}}
}

// Broken returns how many of at most so many combinations, evenly spread over all,
// break each limit in some set-up, and of how many cars that go together and can be built:
// what stands in the way where no combination holds all limits.
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
		if !s.excluded(w.parts) && w.breaks(by) {
			of++
		}
	}
	return by, of
}

// breaks counts the limits that the combination at hand breaks; false where it cannot be
// built in some set-up.
func (w *shelfWorker) breaks(by []int) bool {
	w.changes = w.s.gather(w.changes[:0], w.parts)
	broken := make([]bool, len(by))
	for _, up := range w.s.setUps() {
		car, err := w.Base.Assemble(append(w.changes[:len(w.changes):len(w.changes)], up.Changes...), up.Hold)
		if err != nil {
			return false
		}
		for i := range broken {
			broken[i] = broken[i] || !w.s.Limits[i].heldBy(car, up.From, w.ws)
		}
	}
	for i, b := range broken {
		if b {
			by[i]++
		}
	}
	return true
}
