package optimize

import (
	"context"
	"math"
	"slices"
	"sort"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Measurement is something more that could be measured, and what it would do for
// an advice.
type Measurement struct {
	// Unknown is the coordinate to be measured again, at TapeSD; -1 where it is
	// gauge readings that should be taken.
	Unknown int
	// Readings with these parts, at these travels, on this side, in one run.
	Changes []solver.Change
	Side    solver.Side
	Travels []float64
	// Turned and Base say that the gauge is to be turned round for it, or set to
	// another base, mm; false and 0 leave it as it was read last.
	Turned bool
	Base   float64
	// SD is the standard deviation that the advised value would then have, mm or
	// radians.
	SD float64
}

// MeasureOptions say what can be measured. The zero value works.
type MeasureOptions struct {
	// TapeSD is the standard deviation of a coordinate measured with care, mm; 0
	// means 0.5.
	TapeSD float64
	// Setups are the parts with which readings could be taken; nil means those of
	// the readings so far and the advised value.
	Setups [][]solver.Change
}

// carefulTape is the standard deviation, mm, of a hardpoint measured by steel rule
// and jig rather than tape and plumb line: common practice.
const carefulTape = 0.5

// NextMeasurements ranks what could be measured next by how well the advised
// value would be known after it: the expected variance of a linear model, which
// does not depend on what is read.
func (f *FittedCar) NextMeasurements(ctx context.Context, q *AdviceRequest, a *Advice, o *MeasureOptions) ([]Measurement, error) {
	if a.Rates == nil {
		return nil, nlp.ProblemErrorf("the advice has no derivatives: nothing can be said of what would narrow it")
	}
	var options MeasureOptions
	if o != nil {
		options = *o
	}
	if options.TapeSD == 0 {
		options.TapeSD = carefulTape
	}
	out := f.tapeAgain(a, options.TapeSD)
	for _, side := range a.Sides {
		for _, parts := range f.setups(q, a, side, options.Setups) {
			more, err := f.readAgain(ctx, a, side, parts)
			if err != nil {
				return nil, err
			}
			out = append(out, more...)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].SD < out[j].SD })
	return out, nil
}

// tapeAgain returns the coordinates that can be measured again.
func (f *FittedCar) tapeAgain(a *Advice, sd float64) []Measurement {
	var out []Measurement
	shared := f.sharedWith(a.Rates)
	for k := range f.Unknowns {
		if !f.Unknowns[k].Parameter.Coordinate() || f.Unknowns[k].Kind != CarUnknown {
			continue
		}
		gain := shared[k] * shared[k] / (f.Covariance.At(k, k) + sd*sd)
		out = append(out, Measurement{Unknown: k, SD: math.Sqrt(math.Max(a.SD*a.SD-gain, 0))})
	}
	return out
}

// sharedWith returns the covariance of each unknown with what has the given
// derivatives.
func (f *FittedCar) sharedWith(rates []float64) []float64 {
	return nlp.SymMulVec(make([]float64, len(rates)), f.Covariance, rates)
}

// mostSetups is how many of the set-ups read before are asked after: parts that lay on
// the bench long ago teach little that those read last do not.
const mostSetups = 12

// setups returns the parts with which readings could be taken on a side: those advised,
// and those of the runs read last.
func (f *FittedCar) setups(q *AdviceRequest, a *Advice, side solver.Side, stated [][]solver.Change) [][]solver.Change {
	if stated != nil {
		return stated
	}
	advised := append(slices.Clone(q.Beside), solver.Change{Parameter: q.Parameter, Sides: q.Sides, Value: a.Value})
	out := [][]solver.Change{advised}
	for i := len(f.Sets) - 1; i >= 0 && len(out) <= mostSetups; i-- {
		s := &f.Sets[i]
		known := slices.ContainsFunc(out, func(c []solver.Change) bool { return sameChanges(c, s.Changes) })
		if s.Side == side && !known {
			out = append(out, s.Changes)
		}
	}
	return out
}

// readAgain returns the runs that can be read in one set-up, with the gauge that
// the side was last read with: the whole of its travels, or static height and one
// of the ends. Where the gauge may lean, the whole is read with it turned round, or
// on another base, as well.
func (f *FittedCar) readAgain(ctx context.Context, a *Advice, side solver.Side, parts []solver.Change) ([]Measurement, error) {
	gauge := f.lastOf(side)
	all := travelsOf(gauge)
	again := Measurement{Unknown: -1, Changes: parts, Side: side, Travels: all}
	runs := []Measurement{again}
	for _, end := range []float64{all[0], all[len(all)-1]} {
		if end != 0 {
			short := again
			short.Travels = []float64{0, end}
			runs = append(runs, short)
		}
	}
	if gauge.SlopeSD > 0 {
		turned, wide := again, again
		turned.Turned, wide.Base = true, wideBase*gauge.Base
		if runs = append(runs, turned); gauge.Gauge != Tape { // whose base is the tyre
			runs = append(runs, wide)
		}
	}
	for i := range runs {
		if err := f.afterReading(ctx, a, gauge, &runs[i]); err != nil {
			return nil, err
		}
	}
	return runs, nil
}

// wideBase is how many times as long a second base of a gauge is taken: on it the same
// lean is half the toe.
const wideBase = 2

// lastOf returns the last set of a side.
func (f *FittedCar) lastOf(side solver.Side) *ReadingSet {
	for i := len(f.Sets) - 1; i > 0; i-- {
		if f.Sets[i].Side == side {
			return &f.Sets[i]
		}
	}
	return &f.Sets[0]
}

// travelsOf returns the travels of a set, ascending, each once.
func travelsOf(s *ReadingSet) []float64 {
	var out []float64
	for _, r := range s.Readings {
		out = append(out, r.Travel)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// afterReading sets the standard deviation that the advised value has after a run.
func (f *FittedCar) afterReading(ctx context.Context, a *Advice, gauge *ReadingSet, m *Measurement) error {
	s := *gauge
	s.Changes, s.Zero, s.Readings = m.Changes, nil, nil
	s.Turned = s.Turned != m.Turned
	if m.Base > 0 {
		s.Base = m.Base
	}
	for _, t := range m.Travels {
		s.Readings = append(s.Readings, Reading{Travel: t})
	}
	v, err := f.innovation(ctx, []ReadingSet{s})
	if err != nil {
		return err
	}
	shared := nlp.MulVec(make([]float64, len(v.off)), v.rates, f.sharedWith(a.Rates))
	m.SD = math.Sqrt(math.Max(a.SD*a.SD-v.chiSquare(shared), 0))
	return nil
}

// Lean returns by how much the slopes of the gauges could move the advised value: the
// half of the 90 % band that they alone make, mm or radians. It is 0 where no gauge may
// lean, and where nothing is known of how the value depends on the readings.
func (f *FittedCar) Lean(a *Advice) float64 {
	if a.Rates == nil {
		return 0
	}
	shared, variance := f.sharedWith(a.Rates), 0.0
	for k := range f.Unknowns {
		if f.Unknowns[k].Kind == GaugeSlopeUnknown {
			variance += shared[k] * shared[k] / f.Covariance.At(k, k)
		}
	}
	return bandSD * math.Sqrt(variance)
}

// HalfStep returns half a step of the advice asked for, or half of the band that needs no
// further readings: what moves the advice by more changes the part.
func (q *AdviceRequest) HalfStep() float64 {
	if q.Step > 0 {
		return q.Step / 2
	}
	return finalBand / 2
}
