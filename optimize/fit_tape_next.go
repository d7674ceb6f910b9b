package optimize

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// ToeEnds are toe changes of a fitted car at some travels, with their derivatives by the
// unknowns of the fit.
type ToeEnds struct {
	Change, SD []solver.Angle
	rates      *mat.Dense
}

// ToeEnds returns the toe change less target at the travels of a judge other than 0, sides
// one after the other. The error says why the fitted car does not make them.
func (f *FittedCar) ToeEnds(j *Judge) (*ToeEnds, error) { return f.ToeEndsWith(j, nil) }

// ToeEndsWith is [FittedCar.ToeEnds] of the car with parts fitted.
func (f *FittedCar) ToeEndsWith(j *Judge, parts []solver.Change) (*ToeEnds, error) {
	b, err := f.bench(j)
	if err != nil {
		return nil, err
	}
	c, err := b.rated(f.Car(parts), f.Unknowns, nil)
	if err != nil {
		return nil, err
	}
	var rows []int
	for i := range c.change {
		if j.Travels[i%len(j.Travels)] != 0 {
			rows = append(rows, i)
		}
	}
	e := &ToeEnds{rates: mat.NewDense(len(rows), len(f.Unknowns), nil)}
	for i, row := range rows {
		e.rates.SetRow(i, c.rates.RawRowView(row))
		e.Change = append(e.Change, solver.Angle(c.change[row]))
		e.SD = append(e.SD, solver.Angle(f.sdOf(c.rates.RawRowView(row))))
	}
	return e, nil
}

// NextTape is one more measure of a tape, and what it would leave of the standard
// deviations of some toe changes.
type NextTape struct {
	Measure int          // among those offered
	SD      solver.Angle // the largest that it leaves
}

// TapeExpected returns what measures should read of the fitted car, mm; what was read of
// those that no unknown moves.
func (f *FittedCar) TapeExpected(t *Taped) []float64 {
	out := make([]float64, len(t.Measures))
	for i := range out {
		out[i] = t.Measures[i].Value
	}
	rows := newTapeRows(t, f.Unknowns, 0)
	for i, which := range rows.which {
		out[which], _ = rows.predicted(i, f.Values)
	}
	return out
}

// leastGain is the least part of the variances of the toe that a measure worth taking
// takes away.
const leastGain = 0.01

// NextTapes ranks measures that could be taken, their values aside, by how well toe
// changes would be known after each: the least sum of their variances first, as the
// linearised model has it. Those that would say next to nothing are left out.
func (f *FittedCar) NextTapes(offered *Taped, ends []*ToeEnds) []NextTape {
	rows := newTapeRows(offered, f.Unknowns, 0)
	var shared [][]float64 // of each end with the unknowns
	var before []float64
	for _, e := range ends {
		for i := range e.SD {
			shared = append(shared, f.sharedWith(e.rates.RawRowView(i)))
			before = append(before, float64(e.SD[i])*float64(e.SD[i]))
		}
	}
	v := nlp.NewValues(nlp.Size{Variables: len(f.Unknowns), Residuals: len(rows.measures)})
	rows.write(f.Values, &v)
	type ranked struct {
		NextTape
		left float64
	}
	var list []ranked
	for i := range rows.measures {
		row := v.JR.RawRowView(i)
		spread := 1 + nlp.Inner(f.Covariance, row)
		r := ranked{NextTape: NextTape{Measure: rows.which[i]}}
		for k := range shared {
			s := floats.Dot(shared[k], row)
			after := math.Max(before[k]-s*s/spread, 0)
			r.left += after
			r.SD = max(r.SD, solver.Angle(math.Sqrt(after)))
		}
		if r.left < (1-leastGain)*floats.Sum(before) {
			list = append(list, r)
		}
	}
	slices.SortStableFunc(list, func(a, b ranked) int { return cmp.Compare(a.left, b.left) })
	out := make([]NextTape, len(list))
	for i := range list {
		out[i] = list[i].NextTape
	}
	return out
}
