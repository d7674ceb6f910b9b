package optimize

import (
	"math"

	"toewright/solver"
)

// Covers asks over which values of one set-up parameter a car keeps its figure within a
// limit, everything else as it stands.
type Covers struct {
	Judge
	Changes []solver.Change // of the car; what they say of Free gives way to its values
	Free    Free            // bounds are where it is no longer looked at
	Own     float64         // value that the car has, mm or radians
	Limit   solver.Angle    // of the figure
	Measure Measure
}

// Covered is the interval about the car's own value: the figure is within the limit from
// Low to High, both included.
type Covered struct {
	Own       Figures
	Held      bool // at the own value; there is no interval where it is not
	Low, High CoverEnd
}

// CoverEnd is an end of an interval.
type CoverEnd struct {
	Value float64 // the last that is held
	By    EndKind
	// Beyond is a value just past the end, NaN at a bound.
	Beyond float64
	// Side and Travel are those of the largest toe change less target at the end; of
	// an RMS, the side is that of the larger one.
	Side   solver.Side
	Travel float64
}

// EndKind says what ends an interval.
type EndKind uint8

// What ends an interval: the limit; that the linkage locks within the window or cannot
// be assembled; the bound to which it was looked.
const (
	AtLimit EndKind = iota
	AtLock
	AtBound
)

// String returns "limit", "lock" or "bound".
func (k EndKind) String() string { return [...]string{"limit", "lock", "bound"}[k] }

// coverSamples is the number of steps in which the way from the own value to a bound is
// looked at. What the limit is crossed by between two of them is found where the figure
// peaks there.
const coverSamples = 120

// coverHalvings divide a step by a million million: below what a figure can tell.
const coverHalvings = 40

// Find returns the interval.
func (c *Covers) Find() (Covered, error) {
	if err := c.Check(); err != nil {
		return Covered{}, err
	}
	w := c.worker()
	out := Covered{Own: w.at(c.Own)}
	if out.Held = w.holds(c.Own); !out.Held {
		return out, nil
	}
	out.Low = w.end(math.Min(c.Free.Min, c.Own))
	out.High = w.end(math.Max(c.Free.Max, c.Own))
	return out, nil
}

// coverWorker builds the cars of an interval.
type coverWorker struct {
	*bench
	c       *Covers
	changes []solver.Change // that of the parameter last
}

func (c *Covers) worker() *coverWorker {
	changes := c.ChangesAt(0)
	return &coverWorker{c.benchFor(changedAlike(changes)), c, changes}
}

// ChangesAt returns the changes of the car with the parameter at a value, its own change
// last.
func (c *Covers) ChangesAt(x float64) []solver.Change {
	return append(c.Free.without(c.Changes), c.Free.change(x))
}

// at returns the figures of the car with the parameter at a value.
func (w *coverWorker) at(x float64) Figures {
	w.changes[len(w.changes)-1].Value = x
	return w.figures(w.changes)
}

// figure is that which counts, radians; NaN where there is none.
func (w *coverWorker) figure(x float64) float64 { return w.at(x).Of(w.c.Measure).Radians() }

func (w *coverWorker) holds(x float64) bool { return w.figure(x) <= w.c.Limit.Radians() }

// end goes from the own value, which is held, to a bound and returns where that stops.
func (w *coverWorker) end(bound float64) CoverEnd {
	step := (bound - w.c.Own) / coverSamples
	held, before, last := w.c.Own, math.NaN(), w.figure(w.c.Own)
	for i := 1; i <= coverSamples && step != 0; i++ {
		x := w.c.Own + float64(i)*step
		if i == coverSamples {
			x = bound
		}
		f := w.figure(x)
		if last > before && last > f {
			// The figure peaks about the sample before.
			if top := w.peak(held-step, x); !w.holds(top) {
				return w.between(held-step, top)
			}
		}
		if !(f <= w.c.Limit.Radians()) {
			return w.between(held, x)
		}
		held, before, last = x, last, f
	}
	return w.ending(bound, math.NaN(), AtBound)
}

// peak returns where the figure is largest between two values (golden section).
func (w *coverWorker) peak(a, b float64) float64 {
	const golden, tol = 0.6180339887498949, 1e-6
	x, y := b-golden*(b-a), a+golden*(b-a)
	fx, fy := w.figure(x), w.figure(y)
	for from := math.Abs(b - a); math.Abs(b-a) > tol*from; {
		if fx > fy {
			b, y, fy = y, x, fx
			x = b - golden*(b-a)
			fx = w.figure(x)
		} else {
			a, x, fx = x, y, fy
			y = a + golden*(b-a)
			fy = w.figure(y)
		}
	}
	return (a + b) / 2
}

// between returns the last value that is held on the way from one that is to one that is
// not.
func (w *coverWorker) between(held, lost float64) CoverEnd {
	for range coverHalvings {
		mid := held + (lost-held)/2
		if w.holds(mid) {
			held = mid
		} else {
			lost = mid
		}
	}
	by := AtLimit
	if math.IsNaN(w.figure(lost)) {
		by = AtLock
	}
	return w.ending(held, lost, by)
}

// ending says of a value that is held what decides there.
func (w *coverWorker) ending(x, beyond float64, by EndKind) CoverEnd {
	e := CoverEnd{Value: x, By: by, Beyond: beyond, Side: w.sides[0]}
	w.at(x)
	worst, n := 0.0, len(w.Travels)
	for s, side := range w.sides {
		own := w.change[s*n : (s+1)*n]
		place, most := 0, 0.0
		for i, d := range own {
			if math.Abs(d) > most {
				place, most = i, math.Abs(d)
			}
		}
		if w.c.Measure == RMS {
			most = CarFigures(own, 1).RMS.Radians()
		}
		if most > worst {
			worst, e.Side, e.Travel = most, side, w.Travels[place]
		}
	}
	return e
}

// without returns changes without those of the parameter on its sides, whose values are
// its own: of a change of both wheels what the parameter leaves to one of them.
func (f *Free) without(changes []solver.Change) []solver.Change {
	var out []solver.Change
	for _, c := range changes {
		left := true
		if c.Parameter.Key == f.Parameter.Key {
			c.Sides, left = c.Sides.Without(f.Sides)
		}
		if left {
			out = append(out, c)
		}
	}
	return out
}
