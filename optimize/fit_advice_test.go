package optimize_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/optimize"
	"toewright/solver"
)

// heightRequest asks for the outer ball's height in the window of the tests.
func heightRequest(t testing.TB, base *solver.Assembler) *optimize.AdviceRequest {
	t.Helper()
	q := &optimize.AdviceRequest{Step: 1.5, Min: -60, Max: 60, Window: optimize.Judge{Travels: grid}}
	q.Parameter = changeOf(t, base, "tieRodOuterHeight", 0).Parameter
	return q
}

// TestAdviceOnSimulatedCars reaches the true best of simulated cars within a
// narrow band that holds it.
func TestAdviceOnSimulatedCars(t *testing.T) {
	for _, tt := range []struct {
		name string
		step int
	}{{"fit01.json", -2}, {"fit02.json", -9}} {
		p, c := loadFitCase(t, tt.name)
		a := adviceOf(t, fitCar(t, p), c.request(t, p.Base))
		if !(math.Abs(a.Best-c.TrueBest) <= 0.75) || !(a.Low <= c.TrueBest && c.TrueBest <= a.High) {
			t.Errorf("%s: best = %.3f (%.3f to %.3f), want %.3f", tt.name, a.Best, a.Low, a.High, c.TrueBest)
		}
		if !(a.High-a.Low <= 0.6) || !a.Final {
			t.Errorf("%s: band of %.3f mm, final %t, want at most 0.6 and final", tt.name, a.High-a.Low, a.Final)
		}
		if a.Step != tt.step || a.Value != 1.5*float64(tt.step) || a.Fitted != -6 {
			t.Errorf("%s: %d steps, %g mm from %g, want %d steps from -6", tt.name, a.Step, a.Value, a.Fitted, tt.step)
		}
		if rms := a.AtBest.RMS; !(math.Abs(rms.Fitted.Degrees()-c.TrueBestRMS) <= 0.01) {
			t.Errorf("%s: RMS = %.4f deg, want %.4f", tt.name, rms.Fitted.Degrees(), c.TrueBestRMS)
		}
	}
}

// TestAdviceRates compares the derivatives behind the band with advice on cars
// that differ by one unknown.
func TestAdviceRates(t *testing.T) {
	c := newTruth(t, 11, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	q := heightRequest(t, c.base)
	a := adviceOf(t, f, q)
	const h, tol = 0.05, 1e-4 // mm; second differences over 0.12 mm and over h
	for k := range f.Unknowns {
		at := func(x float64) float64 {
			moved := *f
			moved.Values = append([]float64(nil), f.Values...)
			moved.Values[k] += x
			return adviceOf(t, &moved, q).Best
		}
		if want := (at(h) - at(-h)) / (2 * h); !(math.Abs(a.Rates[k]-want) <= tol) {
			t.Errorf("%s: the best height moves by %.6f a mm, want %.6f", f.Unknowns[k].Key(), a.Rates[k], want)
		}
	}
}

// TestAdviceWithoutNoise finds the best height of a car that is as filed.
func TestAdviceWithoutNoise(t *testing.T) {
	c := newTruth(t, 1, 0)
	a := adviceOf(t, fitCar(t, c.twoStacks(t, 0)), heightRequest(t, c.base))
	if want := 1.9701; !(math.Abs(a.Best-want) <= 1e-4) { // scipy on the published coordinates
		t.Errorf("best = %.5f, want %.4f", a.Best, want)
	}
}

func TestAdviceBounds(t *testing.T) {
	c := newTruth(t, 1, 0)
	f := fitCar(t, c.twoStacks(t, 0))
	for _, tt := range []struct {
		name                 string
		min, max, step       float64
		best, value          float64
		steps                int
		bound, low, atHigher bool
	}{
		{"free", -60, 60, 0, 1.9701, 1.9701, 0, false, false, false},
		{"steps", -60, 60, 1.5, 1.9701, 1.5, 1, false, false, false},
		{"steps within the bounds", -60, 2.9, 3, 1.9701, 0, 0, false, false, false},
		{"lower bound", 4, 20, 3, 4, 6, 2, true, true, false},
		{"upper bound", -20, 1, 1.5, 1, 0, 0, true, false, true},
	} {
		q := heightRequest(t, c.base)
		q.Min, q.Max, q.Step = tt.min, tt.max, tt.step
		a := adviceOf(t, f, q)
		if !(math.Abs(a.Best-tt.best) <= 1e-4) || !(math.Abs(a.Value-tt.value) <= 1e-4) || a.Step != tt.steps || a.AtBound != tt.bound {
			t.Errorf("%s: best %.4f, value %.4f, %d steps, at bound %t; want %+v", tt.name, a.Best, a.Value, a.Step, a.AtBound, tt)
		}
		if !(a.Low >= tt.min && a.High <= tt.max && a.Low <= a.High) {
			t.Errorf("%s: band %.4f to %.4f, want it within %g to %g", tt.name, a.Low, a.High, tt.min, tt.max)
		}
		if tt.low && a.Low != tt.min || tt.atHigher && a.High != tt.max {
			t.Errorf("%s: band %.4f to %.4f does not reach the bound that cuts it", tt.name, a.Low, a.High)
		}
	}
}

// TestAdviceRod measures the tie rod of both cars.
func TestAdviceRod(t *testing.T) {
	c := newTruth(t, 13, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	a := adviceOf(t, f, heightRequest(t, c.base))
	length := func(height float64) float64 {
		x, err := c.base.Assemble(f.Car([]solver.Change{changeOf(t, c.base, "tieRodOuterHeight", height)}), solver.HoldAll)
		if err != nil {
			t.Fatal(err)
		}
		return r3.Norm(r3.Sub(x.StaticPoint(solver.Left, 6), x.StaticPoint(solver.Left, 7)))
	}
	if got, want := a.Tie, length(a.Value)-length(-6); !(math.Abs(got-want) <= 1e-9) || a.Drag != 0 {
		t.Errorf("tie rod %.6f mm, drag link %g; want %.6f and none", got, a.Drag, want)
	}
}

func TestAdviceErrors(t *testing.T) {
	c := newTruth(t, 1, 0)
	f := fitCar(t, c.twoStacks(t, 0))
	for _, tt := range []struct {
		name, want string
		change     func(*optimize.AdviceRequest)
	}{
		{"no room", "leaves no room", func(q *optimize.AdviceRequest) { q.Max = q.Min }},
		{"negative step", "step of tieRodOuterHeight is -1 mm", func(q *optimize.AdviceRequest) { q.Step = -1 }},
		{"no whole step", "no whole number of steps", func(q *optimize.AdviceRequest) { q.Min, q.Max, q.Step = 1, 2, 4 }},
		{"no static height", "does not contain travel 0", func(q *optimize.AdviceRequest) { q.Window.Travels = []float64{1, 2} }},
		{"out of reach", "cannot be fitted anywhere from -60 mm to 60 mm", func(q *optimize.AdviceRequest) { q.Window.Travels = []float64{0, 900} }},
		{"out of reach, an angle", "camber cannot be fitted anywhere from 80 deg to 85 deg", func(q *optimize.AdviceRequest) {
			q.Parameter = changeOf(t, c.base, "camber", 0).Parameter
			q.Step, q.Min, q.Max = 0, solver.Deg(80).Radians(), solver.Deg(85).Radians()
		}},
		{"no effect", "tyreRadius changes no toe", func(q *optimize.AdviceRequest) {
			q.Parameter = changeOf(t, c.base, "tyreRadius", 0).Parameter
		}},
	} {
		q := heightRequest(t, c.base)
		tt.change(q)
		if _, err := f.Advise(q); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want one that says %q", tt.name, err, tt.want)
		}
	}
}

func BenchmarkAdvise(b *testing.B) {
	p, c := loadFitCase(b, "fit01.json")
	f := fitCar(b, p)
	q := c.request(b, p.Base)
	b.ReportAllocs()
	for b.Loop() {
		adviceOf(b, f, q)
	}
}
