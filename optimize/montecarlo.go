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
	out := &Sample{First: first, width: w.width()}
	for n := first; n < end; n++ {
		if n%cancelEvery == 0 && ctx.Err() != nil {
			break
		}
		w.build(n)
		out.Cars++
		out.Peak = append(out.Peak, w.peak)
		out.RMS = append(out.RMS, w.rms)
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
	s       *Series
	errs    []Tolerance
	sides   []solver.Side
	xs      []float64
	changes []solver.Change
	ws      *solver.Workspace
	curves  [2]solver.Curve
	zero    int

	change    []float64 // of the car built last
	peak, rms float64
}

func (s *Series) worker() *seriesWorker {
	w := &seriesWorker{s: s, errs: s.errors(), sides: s.sides(), ws: solver.NewWorkspace(), zero: indexOfZero(s.Travels)}
	w.xs = make([]float64, len(w.errs))
	w.changes = append(w.changes, s.Changes...)
	for _, e := range w.errs {
		w.changes = append(w.changes, solver.Change{Parameter: e.Parameter, Sides: e.Sides})
	}
	w.change = make([]float64, w.width())
	return w
}

func (w *seriesWorker) width() int { return len(w.sides) * len(w.s.Travels) }

// build makes car number n and moves it.
func (w *seriesWorker) build(n int) {
	w.s.draw(w.errs, n, w.xs)
	w.measure(w.move())
}

// move assembles the car that is off by xs and sweeps it; false where it cannot
// be built or does not reach the window.
func (w *seriesWorker) move() bool {
	tail := w.changes[len(w.s.Changes):]
	for i := range tail {
		tail[i].Value = w.xs[i]
		if tail[i].Parameter.Absolute {
			tail[i].Value += w.setting(&tail[i])
		}
	}
	car, err := w.s.Base.Assemble(w.changes, w.s.Hold)
	if err != nil {
		return false
	}
	in := solver.SweepInput{Travels: w.s.Travels, Sides: w.s.Judge}
	if err := car.Sweep(w.ws, &in, &w.curves); err != nil {
		return false
	}
	for _, side := range w.sides {
		if !w.curves[side].Reach.Whole() {
			return false
		}
	}
	return true
}

// setting returns what an absolute parameter of the candidate is set to.
func (w *seriesWorker) setting(c *solver.Change) float64 {
	for i := range w.s.Changes {
		k := &w.s.Changes[i]
		if k.Parameter.Key == c.Parameter.Key && (k.Sides == solver.BothSides || k.Sides == c.Sides) {
			return k.Value
		}
	}
	side := solver.Left
	if c.Sides == solver.RightOnly {
		side = solver.Right
	}
	return w.s.Base.Setting(c.Parameter, side)
}

// measure sets the figures of the car moved last.
func (w *seriesWorker) measure(ok bool) {
	w.peak, w.rms = math.NaN(), math.NaN()
	if !ok {
		for i := range w.change {
			w.change[i] = math.NaN()
		}
		return
	}
	k, sum := 0, 0.0
	w.peak = 0
	for _, side := range w.sides {
		c := &w.curves[side]
		home := c.Positions[w.zero].Toe
		for _, p := range c.Positions {
			x := float64(p.Toe - home - w.s.Targets[side].At(p.Travel))
			w.change[k] = x
			w.peak = math.Max(w.peak, math.Abs(x))
			sum += x * x
			k++
		}
	}
	w.rms = math.Sqrt(sum / float64(k))
}
