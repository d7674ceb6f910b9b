package optimize

import (
	"context"
	"math"

	"toewright/solver"
)

// bandCars is how many cars of a series the percentiles of its curves are taken
// from: enough for their 2.5 % ends to be steady to some 3 % of the spread, few
// enough to be kept.
const bandCars = 4096

// Sample is what was found on a run of cars of a series (JCGM 101). Samples of
// runs that follow one another can be joined.
type Sample struct {
	First, Cars int
	// Peak and RMS are those of each car's toe change less target, radians, over
	// the sides judged; NaN for a car that cannot be built or does not reach the
	// window.
	Peak, RMS []float64
	// Change holds the toe changes less target of the first cars of the series,
	// one car after the other, as Spread.Nominal is ordered.
	Change []float64
	width  int
}

// Sample builds the cars from first up to end and moves each through the window.
// A cancelled context ends it early with the cars done so far.
func (s *Series) Sample(ctx context.Context, first, end int) (*Sample, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	w := s.worker()
	out := &Sample{First: first, width: len(w.change)}
	for n := first; n < end; n++ {
		if n%cancelEvery == 0 && ctx.Err() != nil {
			break
		}
		f := w.build(n)
		out.Cars++
		out.Peak = append(out.Peak, float64(f.Peak))
		out.RMS = append(out.RMS, float64(f.RMS))
		if n < bandCars {
			out.Change = append(out.Change, w.change...)
		}
	}
	return out, nil
}

// cancelEvery is the number of cars, some 20 µs each, between looks at the context.
const cancelEvery = 64

// Join appends the sample of the cars that follow.
func (a *Sample) Join(b *Sample) {
	a.Cars += b.Cars
	a.Peak = append(a.Peak, b.Peak...)
	a.RMS = append(a.RMS, b.RMS...)
	a.Change = append(a.Change, b.Change...)
}

// Band returns the given percentiles (0.025 for 2.5 %) of the toe change at each
// side and travel, over the first cars of the series that could be built: one
// row for each percentile.
func (a *Sample) Band(shares ...float64) [][]float64 {
	out := make([][]float64, len(shares))
	for i := range a.width {
		var xs []float64
		for k := i; k < len(a.Change); k += a.width {
			if !math.IsNaN(a.Change[k]) {
				xs = append(xs, a.Change[k])
			}
		}
		for j, q := range Quantiles(xs, shares...) {
			out[j] = append(out[j], q)
		}
	}
	return out
}

// Failed returns the number of cars that cannot be built or do not reach the
// window.
func (a *Sample) Failed() int {
	n := 0
	for _, x := range a.Peak {
		if math.IsNaN(x) {
			n++
		}
	}
	return n
}

// Figures returns the figure of every car that a measure asks for.
func (a *Sample) Figures(m Measure) []float64 {
	if m == Peak {
		return a.Peak
	}
	return a.RMS
}

// Yield returns the share of cars whose figure is at most limit, with its 95 %
// interval (Wilson's score). A car that cannot be built does not pass.
func (a *Sample) Yield(m Measure, limit solver.Angle) (share, low, high float64) {
	pass := 0
	for _, x := range a.Figures(m) {
		if x <= float64(limit) {
			pass++
		}
	}
	return wilson(pass, a.Cars)
}

// wilson returns a share with its 95 % score interval.
func wilson(pass, of int) (share, low, high float64) {
	if of == 0 {
		return math.NaN(), 0, 1
	}
	const z = 1.959963984540054
	n, p := float64(of), float64(pass)/float64(of)
	mid := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return p, math.Max(0, mid-half), math.Min(1, mid+half)
}

// seriesWorker builds cars in memory of its own.
type seriesWorker struct {
	*bench
	s       *Series
	errs    []Tolerance
	xs      []float64
	changes []solver.Change
}

func (s *Series) worker() *seriesWorker {
	w := &seriesWorker{bench: s.bench(), s: s, errs: s.errors()}
	w.xs = make([]float64, len(w.errs))
	w.changes = append(w.changes, s.Changes...)
	for _, e := range w.errs {
		w.changes = append(w.changes, solver.Change{Parameter: e.Parameter, Sides: e.Sides})
	}
	return w
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
