package optimize_test

import (
	"math"
	"slices"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// TestNextMeasurements holds what is expected of readings and of a tape against
// fits that have them.
func TestNextMeasurements(t *testing.T) {
	c := newTruth(t, 31, 2.5)
	p := &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{c.read(t, noise, nil, grid...)}}
	q := heightRequest(t, c.base)
	f := fitCar(t, p)
	a := adviceOf(t, f, q)
	ms, err := f.NextMeasurements(t.Context(), q, a, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.IsSortedFunc(ms, func(x, y optimize.Measurement) int { return int(math.Copysign(1, x.SD-y.SD)) }) {
		t.Error("measurements are not ranked")
	}
	if best := ms[0]; best.Unknown >= 0 || !(best.SD < a.SD) {
		t.Errorf("first of the measurements is %+v, want readings at a second stack", best)
	}
	tape := ms[slices.IndexFunc(ms, func(m optimize.Measurement) bool { return m.Unknown >= 0 })]
	for _, m := range []optimize.Measurement{ms[0], tape} {
		if got, want := m.SD, sdAfter(t, f, p, q, &m); !(math.Abs(got-want) <= 0.05*want) { // what is not linear
			t.Errorf("%+v: expected standard deviation differs from %.4f mm of a fit", m, want)
		}
	}
}

// sdAfter measures what was proposed, reading exactly what is expected, and fits
// again.
func sdAfter(t *testing.T, f *optimize.FittedCar, p *optimize.GaugeFit, q *optimize.AdviceRequest, m *optimize.Measurement) float64 {
	t.Helper()
	next := *p
	if m.Unknown >= 0 {
		for k, u := range f.Unknowns {
			sd := u.SD
			if k == m.Unknown {
				sd = 1 / math.Hypot(1/sd, 2) // with a tape of 0.5 mm
			}
			next.Priors = append(next.Priors, optimize.FitPrior{Parameter: u.Parameter, Sides: u.Sides, SD: sd})
		}
		// The prior keeps the filed value: only its weight counts here.
		return adviceOf(t, fitCar(t, &next), q).SD
	}
	fitted := &truth{base: p.Base, off: f.Car(nil), r: newTruth(t, 1, 0).r}
	next.Sets = append(slices.Clone(p.Sets), fitted.read(t, 0, m.Changes, m.Travels...))
	return adviceOf(t, fitCar(t, &next), q).SD
}

// TestNextMeasurementsStated takes only the set-ups that are possible.
func TestNextMeasurementsStated(t *testing.T) {
	c := newTruth(t, 31, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	q := heightRequest(t, c.base)
	setup := c.twoStacks(t, noise).Sets[1].Changes
	ms, err := f.NextMeasurements(t.Context(), q, adviceOf(t, f, q), &optimize.MeasureOptions{Setups: [][]solver.Change{setup}})
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range ms {
		if m.Unknown < 0 && (len(m.Changes) != 1 || m.Changes[0].Value != -6) {
			t.Errorf("readings proposed with %v, want the stated set-up alone", m.Changes)
		}
	}
}
