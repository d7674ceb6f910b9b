package optimize_test

import (
	"math"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// edgeCase is a fitted car whose window reaches full droop: a part moved too far in
// one direction locks it there.
type edgeCase struct {
	f      *optimize.FittedCar
	change func(value float64) []solver.Change
	window optimize.Judge
	edge   float64 // the last value that makes the window, mm
}

// newEdge finds the edge between 0 and a value that does not make the window.
func newEdge(t *testing.T, key string, beyond float64) *edgeCase {
	t.Helper()
	c := newTruth(t, 1, 0)
	e := &edgeCase{f: fitCar(t, c.twoStacks(t, 0))}
	e.change = func(v float64) []solver.Change { return []solver.Change{changeOf(t, c.base, key, v)} }
	e.window = optimize.Judge{Travels: []float64{-130, -100, -50, 0, 50, 100, 130}, Sides: solver.LeftOnly}
	for range 60 {
		mid := (e.edge + beyond) / 2
		if _, err := e.f.Predict(&e.window, e.change(mid)); err == nil {
			e.edge = mid
		} else {
			beyond = mid
		}
	}
	if e.edge == beyond || e.edge == 0 {
		t.Fatalf("%s has no edge between 0 and %g mm", key, beyond)
	}
	return e
}

// request asks for the value whose curve is some times that of a value.
func (e *edgeCase) request(t *testing.T, value, times, step float64) *optimize.AdviceRequest {
	t.Helper()
	p, err := e.f.Predict(&e.window, e.change(value))
	if err != nil {
		t.Fatal(err)
	}
	q := &optimize.AdviceRequest{Parameter: e.change(0)[0].Parameter, Step: step, Min: -100, Max: 100, Window: e.window}
	for _, x := range p.Change {
		q.Window.Targets[solver.Left].Change = append(q.Window.Targets[solver.Left].Change, x*solver.Angle(times))
	}
	q.Window.Targets[solver.Left].Travel = e.window.Travels
	return q
}

// edges are a low outer and a high inner ball: the edge lies below and above.
var edges = []struct {
	key    string
	beyond float64
}{{"tieRodOuterHeight", -150}, {"tieRodInnerHeight", 150}}

// TestAdviceNearTheEdge asks for the very curve of a value close to the edge of what
// can be built, closer than the slopes beside the best value were once differenced.
func TestAdviceNearTheEdge(t *testing.T) {
	for _, tt := range edges {
		e := newEdge(t, tt.key, tt.beyond)
		for _, off := range []float64{1.5, 0.01} {
			want := e.edge - math.Copysign(off, e.edge)
			a := adviceOf(t, e.f, e.request(t, want, 1, 0))
			if !(math.Abs(a.Best-want) <= 1e-6) || a.Value != a.Best || a.AtBound {
				t.Errorf("%s, %g mm from the edge: best %.6f, value %.6f, at bound %t; want %.6f", tt.key, off, a.Best, a.Value, a.AtBound, want)
			}
			if !(a.SD > 0 && a.SD < 20) || !(a.Low < want && want < a.High) {
				t.Errorf("%s, %g mm from the edge: band %.3f to %.3f, SD %.3f mm; want a band around %.3f", tt.key, off, a.Low, a.High, a.SD, want)
			}
		}
	}
}

// TestAdviceBeyondTheEdge asks for more than the car can be built with: the best value
// is the last that can be.
func TestAdviceBeyondTheEdge(t *testing.T) {
	for _, tt := range edges {
		e := newEdge(t, tt.key, tt.beyond)
		a := adviceOf(t, e.f, e.request(t, e.edge, 2, 0))
		if !(math.Abs(a.Best-e.edge) <= 1e-5) || !a.AtBound {
			t.Errorf("%s: best %.6f mm, at bound %t; want the edge at %.6f", tt.key, a.Best, a.AtBound, e.edge)
		}
		if !(a.Low >= -100 && a.High <= 100 && a.Low <= a.Best && a.Best <= a.High) {
			t.Errorf("%s: band %.3f to %.3f mm, want it around %.3f and within -100 to 100", tt.key, a.Low, a.High, a.Best)
		}
	}
}

// TestAdviceStepsShortOfTheEdge wants whole steps that can be fitted, where the nearest
// to the best value cannot.
func TestAdviceStepsShortOfTheEdge(t *testing.T) {
	for _, tt := range edges {
		e := newEdge(t, tt.key, tt.beyond)
		const step = 5
		last := math.Trunc(e.edge / step) // the last whole step short of the edge
		best := e.edge - math.Copysign(0.5, e.edge)
		if math.Round(best/step) == last {
			t.Fatalf("%s: %.3f mm is next to a step that can be fitted: the test shows nothing", tt.key, best)
		}
		q := e.request(t, best, 1, step)
		a := adviceOf(t, e.f, q)
		if a.Step != int(last) || a.Value != last*step || !(math.Abs(a.Best-best) <= 1e-6) {
			t.Errorf("%s: %d steps, %g mm, best %.6f; want %g steps beside %.6f", tt.key, a.Step, a.Value, a.Best, last, best)
		}
		at, err := e.f.Predict(&q.Window, e.change(a.Value))
		if err != nil {
			t.Fatal(err)
		}
		if got, want := a.AtValue.Change[0], at.Change[0]; !(math.Abs(float64(got-want)) <= 1e-12) {
			t.Errorf("%s: toe change %.6f rad at full droop with the steps, want %.6f as predicted", tt.key, got, want)
		}
	}
}

// TestAdviceWithoutAStepThatFits says so where every whole step within the bounds locks.
func TestAdviceWithoutAStepThatFits(t *testing.T) {
	e := newEdge(t, "tieRodOuterHeight", -150)
	q := e.request(t, e.edge+0.5, 1, 35) // of -105, -70 and -35 only the last can be fitted
	q.Max = e.edge + 1
	const want = "tieRodOuterHeight is best at -69.01 mm, but with the whole steps of 35 mm"
	if a, err := e.f.Advise(q); err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("Advise = %v, %v; want an error that says %q", a, err, want)
	}
}

// TestAdviceWithoutACarBefore cannot say how far to screw the rod where the parts to be
// fitted beside do not go with the ride height at which the car was read last.
func TestAdviceWithoutACarBefore(t *testing.T) {
	c := newTruth(t, 1, 0)
	high := changeOf(t, c.base, "rideHeight", 150)
	p := c.twoStacks(t, 0)
	p.Sets = append(p.Sets, c.read(t, 0, []solver.Change{high}, -10, 0, 10))
	q := &optimize.AdviceRequest{
		Parameter: high.Parameter, Min: -20, Max: 0,
		Beside: []solver.Change{changeOf(t, c.base, "lowerBallJointHeight", -300)},
		Window: optimize.Judge{Travels: []float64{-10, 0, 10}, Sides: solver.LeftOnly},
	}
	const want = "the static position cannot be met: ride height stands in the way"
	if a, err := fitCar(t, p).Advise(q); err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("Advise = %v, %v; want an error that says %q", a, err, want)
	}
	q.Beside = nil
	if a := adviceOf(t, fitCar(t, p), q); a.Fitted != 150 {
		t.Errorf("without the parts beside: fitted %g mm, want the 150 of the last readings", a.Fitted)
	}
}
