package optimize

import (
	"context"
	"math"

	"toewright/solver"
)

// Census is what is kept of a series of cars (JCGM 101), however long the series.
// Censuses of runs of one series add up to just the census of all, in any order.
type Census struct {
	Cars   int
	Failed int // of them, cars that cannot be built or do not reach the window
	Passed int // of them, cars whose figure is at most the series' limit
	// Figure counts the series' measure of each car's toe change less target,
	// radians, of the worse of the sides judged.
	Figure *Tally
	// Curve counts the toe changes less target at each place, as Spread.Nominal
	// is ordered.
	Curve []*Tally
}

// How finely a census tells values apart, by bits after the leading one of their
// distance from the nominal car's.
const (
	figureBits = 12
	curveBits  = 7
)

// NewCensus returns the census of no cars about the nominal one of a propagation.
func (s *Series) NewCensus(p *Spread) *Census {
	c := &Census{Figure: NewTally(s.Figure(p.Nominal).Radians(), figureBits), Curve: make([]*Tally, len(p.Nominal))}
	for i, x := range p.Nominal {
		c.Curve[i] = NewTally(x, curveBits)
	}
	return c
}

// Count builds the cars of a span and moves each through the window. A cancelled
// context ends it early with the cars done so far.
func (s *Series) Count(ctx context.Context, p *Spread, cars Span, parallel Parallel) (*Census, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	start := func() *seriesWorker { return s.worker(p) }
	out := s.NewCensus(p)
	for _, w := range divide(ctx, &parallel, cars, seriesChunk, start, (*seriesWorker).count) {
		out.Join(w.found)
	}
	return out, nil
}

// add counts a car by the figure that is held against the limit and its toe
// changes.
func (c *Census) add(figure, limit float64, change []float64) {
	c.Cars++
	if math.IsNaN(figure) {
		c.Failed++
		return
	}
	if figure <= limit {
		c.Passed++
	}
	c.Figure.Add(figure)
	for i, x := range change {
		c.Curve[i].Add(x)
	}
}

// Join adds the cars of another run of the series.
func (c *Census) Join(o *Census) {
	c.Cars += o.Cars
	c.Failed += o.Failed
	c.Passed += o.Passed
	c.Figure.Join(o.Figure)
	for i, t := range o.Curve {
		c.Curve[i].Join(t)
	}
}

// Band returns the given quantiles (0.025 for 2.5 %) of the toe change at each
// place, over the cars that could be built: one row for each quantile.
func (c *Census) Band(shares ...float64) [][]float64 {
	out := make([][]float64, len(shares))
	for j, share := range shares {
		for _, t := range c.Curve {
			out[j] = append(out[j], t.Quantile(share))
		}
	}
	return out
}

// Percentile returns the figure that a share of all cars, such as 0.95, stays within;
// NaN where it falls among the cars that cannot be built or do not reach the window,
// which are worse than any other.
func (c *Census) Percentile(share float64) solver.Angle {
	return solver.Angle(c.Figure.quantileOf(share, c.Cars))
}

// Yield returns the share of cars that pass, with its 95 % interval (Wilson's
// score). A car that cannot be built does not pass.
func (c *Census) Yield() (share, low, high float64) { return Share(c.Passed, c.Cars) }

// Share returns a share that was counted with its 95 % interval by Wilson's score (E. B.
// Wilson, J. Am. Stat. Assoc. 22, 1927, 209-212), which Brown, Cai and DasGupta (Stat. Sci.
// 16, 2001, 101-133) recommend for few, 40 or less, as well; from memory. Without any it is
// NaN, from 0 to 1.
func Share(pass, of int) (share, low, high float64) {
	if of == 0 {
		return math.NaN(), 0, 1
	}
	const z = 1.959963984540054
	n, p := float64(of), float64(pass)/float64(of)
	mid := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return p, math.Max(0, mid-half), math.Min(1, mid+half)
}

// seriesWorker builds cars in memory of its own and counts them.
type seriesWorker struct {
	*bench
	s       *Series
	errs    []Tolerance
	xs      []float64
	changes []solver.Change
	found   *Census
}

func (s *Series) worker(p *Spread) *seriesWorker {
	w := s.builder()
	w.found = s.NewCensus(p)
	return w
}

// builder returns a worker that counts nothing.
func (s *Series) builder() *seriesWorker {
	w := &seriesWorker{bench: s.bench(), s: s, errs: s.errors()}
	w.xs = make([]float64, len(w.errs))
	w.changes = append(w.changes, s.Changes...)
	for _, e := range w.errs {
		w.changes = append(w.changes, solver.Change{Parameter: e.Parameter, Sides: e.Sides})
	}
	return w
}

// count builds the cars of a span, fewer where the context ends.
func (w *seriesWorker) count(ctx context.Context, cars Span) {
	for n := cars.First; n < cars.End; n++ {
		if n%cancelEvery == 0 && ctx.Err() != nil {
			return
		}
		f := w.build(n)
		w.found.add(float64(f.Of(w.s.Measure)), float64(w.s.Limit), w.change)
	}
}

// build makes car number n and moves it.
func (w *seriesWorker) build(n int) Figures {
	w.s.draw(w.errs, n, w.xs)
	tail := w.changes[len(w.s.Changes):]
	for i := range tail {
		tail[i].Value = w.xs[i]
		if tail[i].Parameter.Absolute {
			tail[i].Value += settingIn(w.Base, w.s.Changes, &tail[i])
		}
	}
	return w.figures(w.changes)
}
