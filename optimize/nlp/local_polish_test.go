package nlp

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// newBox returns a unit box that counts up to 10,000 evaluations.
func newBox(m Model, variables []Variable) *unitBox {
	return &unitBox{
		ctx: context.Background(), model: m, variables: variables,
		x: make([]float64, len(variables)), budget: 10_000,
	}
}

func TestProblemDerivatives(t *testing.T) {
	tests := []struct {
		name string
		m    Model
		x    []float64
	}{
		{"rosenbrock", rosenbrock(), []float64{-1.2, 1}},
		{"branin", branin(), []float64{1, 4}},
		{"six-hump camel", sixHumpCamel(), []float64{0.7, -0.3}},
		{"rastrigin", rastrigin(2), []float64{0.7, -0.3}},
		{"polynomial", polynomialFit(samples(-1, 1, 5), 3, math.Exp), []float64{1, 2, 3}},
		{"rational", rationalFit(samples(-1, 1, 5)), []float64{1, 0.5, -0.4}},
		{"disc", withLimits(rosenbrock(), 1, disc(0.5)), []float64{0.3, -0.4}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			checkJacobians(t, tt.m, tt.x, ones(len(tt.x)))
		})
	}
}

// TestPolishStopsAtItsIterations says so where steps run out before the end.
func TestPolishStopsAtItsIterations(t *testing.T) {
	m := rosenbrock()
	sc, err := newScale(&Objective{}, m.Size().Residuals)
	if err != nil {
		t.Fatal(err)
	}
	for iterations, want := range map[int]Status{2: IterationLimit, 100: Converged} {
		l, ok := newPolisher(newBox(m, square(2, -2, 2)), sc, iterations, func() {}).run([]float64{0.1, 0.9})
		if !ok || l.status != want {
			t.Errorf("after %d steps: status %v, want %v", iterations, l.status, want)
		}
	}
}

// disc is the limit x² + y² <= area.
func disc(area float64) func(x, g []float64, jac *mat.Dense) {
	return func(x, g []float64, jac *mat.Dense) {
		g[0] = x[0]*x[0] + x[1]*x[1] - area
		setRow(jac, 0, 2*x[0], 2*x[1])
	}
}

// plane is the limit x + y >= least.
func plane(least float64) func(x, g []float64, jac *mat.Dense) {
	return func(x, g []float64, jac *mat.Dense) {
		g[0] = least - x[0] - x[1]
		setRow(jac, 0, -1, -1)
	}
}

// distanceTo is x - a, so that its rms is the distance from a over √n and its
// peak the largest difference.
func distanceTo(a ...float64) Model {
	return functionModel{Size{len(a), len(a), 0}, func(x []float64, v *Values) bool {
		if v.JR != nil {
			v.JR.Zero()
		}
		for i := range a {
			v.R[i] = x[i] - a[i]
			if v.JR != nil {
				v.JR.Set(i, i, 1)
			}
		}
		return true
	}}
}

func cube(t float64) float64 { return t * t * t }

// TestPolish compares local minima with exact answers.
func TestPolish(t *testing.T) {
	peak := Objective{Measure: Peak}
	fine := samples(-1, 1, 201) // holds the extremes ±1/2, ±1 of the cubic's error
	tests := []struct {
		name      string
		m         Model
		variables []Variable
		o         Objective
		start     []float64
		value     float64
		x         []float64
		tol       float64 // of x
	}{
		{"curved valley to zero", rosenbrock(), square(2, -2, 2), Objective{}, []float64{0.2, 0.55}, 0, []float64{1, 1}, 1e-9},
		{"valley cut by a bound", rosenbrock(), square(2, -2, 0.5), Objective{}, []float64{0.2, 0.55}, 0.5 / math.Sqrt2, []float64{0.5, 0.25}, 1e-7},
		{"branin", branin(), []Variable{{"x", -5, 10}, {"y", 0, 15}}, Objective{}, []float64{0.5, 0.3}, math.Sqrt(5 / (8 * math.Pi)), []float64{math.Pi, 2.275}, 1e-5},
		{"one linear peak", distanceTo(3, 1), square(2, 0, 2), peak, []float64{0.5, 0.5}, 1, nil, 0},
		// The line nearest to t³ is 3t/4, with error 1/4 at ±1/2 and ±1.
		{"Chebyshev's line for a cubic", polynomialFit(fine, 2, cube), square(2, -3, 3), peak, []float64{0.1, 0.2}, 0.25, []float64{0, 0.75}, 1e-9},
		// The least squares line has slope Σt⁴/Σt²; over [-1, 1] itself 3/5.
		{"least squares line for a cubic", polynomialFit([]float64{-1, 0, 1}, 2, cube), square(2, -3, 3), Objective{}, []float64{0.1, 0.2}, 0, []float64{0, 1}, 1e-9},
		// Group errors (x-1)² and (x+2)²/4: equal at x = 0.
		{"worst of two groups", worstOfTwo(), square(1, -5, 5), Objective{Across: Worst, Groups: []Group{{1, 1, 0}, {1, 1, 0}}}, []float64{0.9}, 1, []float64{0}, 1e-9},
		// Worse wheels (|x|+1)² and (x-3)²: their mean is least, 4, at x = 1.
		{"mean of worse wheels", wheelsOfTwo(), square(1, -5, 5), Objective{Groups: []Group{{2, 1, 2}, {2, 1, 2}}}, []float64{0.3}, 2, []float64{1}, 1e-6},
		{"weighted peaks", worstOfTwo(), square(1, -5, 5), Objective{Measure: Peak, Weights: []float64{2, 1}}, []float64{0.9}, 1.2, []float64{0.4}, 1e-9},
		// Along the disc the value changes with the square: 1e-12 of it is 1e-6 of x.
		{"limit of a disc", withLimits(distanceTo(3, 4), 1, disc(1)), square(2, -5, 5), Objective{}, []float64{0.4, 0.9}, 4 / math.Sqrt2, []float64{0.6, 0.8}, 1e-6},
		{"limit of a disc for a peak", withLimits(distanceTo(2, 2), 1, disc(2)), square(2, -5, 5), peak, []float64{0.4, 0.9}, 1, []float64{1, 1}, 1e-5},
		{"limit of a plane from outside", withLimits(distanceTo(0, 0), 1, plane(2)), square(2, -5, 5), Objective{}, []float64{0.1, 0.3}, 1, []float64{1, 1}, 1e-7},
		{"limit that does not act", withLimits(distanceTo(1, 2), 1, disc(9)), square(2, -5, 5), Objective{}, []float64{0.1, 0.3}, 0, []float64{1, 2}, 1e-9},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := polishFrom(t, tt.m, tt.variables, tt.o, tt.start)
			if l.status != Converged || l.broken {
				t.Fatalf("status, broken = %v, %t, want converged within the limits", l.status, l.broken)
			}
			if !near(l.value, tt.value, 1e-10*math.Max(tt.value, 1e-2)) {
				t.Errorf("value = %.15g, want %.15g", l.value, tt.value)
			}
			if x := l.optimum(tt.variables).X; tt.x != nil && !nearAll(x, tt.x, tt.tol) {
				t.Errorf("x = %.12g, want %g", x, tt.x)
			}
		})
	}
}

// worstOfTwo is x-1 and (x+2)/2, which meet in size at 0.
func worstOfTwo() Model {
	return functionModel{Size{1, 2, 0}, func(x []float64, v *Values) bool {
		v.R[0], v.R[1] = x[0]-1, (x[0]+2)/2
		setRow(v.JR, 0, 1)
		setRow(v.JR, 1, 0.5)
		return true
	}}
}

// wheelsOfTwo has residuals x-1 and x+1, then x-3 twice.
func wheelsOfTwo() Model {
	return functionModel{Size{1, 4, 0}, func(x []float64, v *Values) bool {
		for i, at := range []float64{1, -1, 3, 3} {
			v.R[i] = x[0] - at
			setRow(v.JR, i, 1)
		}
		return true
	}}
}

// polishFrom runs one local search.
func polishFrom(t *testing.T, m Model, variables []Variable, o Objective, u []float64) local {
	t.Helper()
	sc, err := newScale(&o, m.Size().Residuals)
	if err != nil {
		t.Fatal(err)
	}
	l, ok := newPolisher(newBox(m, variables), sc, 100, func() {}).run(u)
	if !ok {
		t.Fatalf("run(%v) = false, want true", u)
	}
	return l
}

// TestPolishEquioscillates checks the sign of a best approximation: the error
// of the rational function reaches its size four times, signs alternating.
func TestPolishEquioscillates(t *testing.T) {
	const tol = 1e-10
	ts := samples(-1, 1, 401)
	m := rationalFit(ts)
	l := polishFrom(t, m, square(3, -3, 3), Objective{Measure: Peak}, []float64{0.6, 0.6, 0.5})
	v := NewValues(m.Size())
	m.Evaluate(l.optimum(square(3, -3, 3)).X, &v)
	extremes, last := 0, 0.0
	for _, r := range v.R {
		if math.Abs(r) >= l.value*(1-tol) && r*last <= 0 {
			extremes++
			last = r
		}
	}
	if extremes < 4 {
		t.Errorf("%d alternating extremes of size %.12g, want 4", extremes, l.value)
	}
}

// TestPolishBounds checks that variables that a bound stops are exactly on it,
// and that a variable without effect stays where it was.
func TestPolishBounds(t *testing.T) {
	variables := []Variable{{"over", 0.1, 0.7}, {"under", -0.3, 0.9}, {"inside", -1, 1}, {"idle", 0, 1}}
	still := functionModel{Size{4, 3, 0}, func(x []float64, v *Values) bool {
		v.R[0], v.R[1], v.R[2] = x[0]-5, x[1]+5, x[2]-0.25
		setRow(v.JR, 0, 1, 0, 0, 0)
		setRow(v.JR, 1, 0, 1, 0, 0)
		setRow(v.JR, 2, 0, 0, 1, 0)
		return true
	}}
	for _, measure := range []Measure{RMS, Peak} {
		each := Objective{Measure: measure, Groups: []Group{{1, 1, 0}, {1, 2, 0}, {1, 1, 0}}}
		o := polishFrom(t, still, variables, each, []float64{0.5, 0.5, 0.5, 0.8}).optimum(variables)
		if o.X[0] != 0.7 || o.X[1] != -0.3 || o.Bounds[0] != AtMax || o.Bounds[1] != AtMin {
			t.Errorf("%v: x = %.17g at %v, want exactly 0.7 and -0.3 at their ends", measure, o.X, o.Bounds)
		}
		if o.Bounds[2] != Inside || o.Bounds[3] != Inside {
			t.Errorf("%v: bounds = %v, want the last two inside", measure, o.Bounds)
		}
		if !near(o.X[3], 0.8, 0.01) {
			t.Errorf("%v: the idle variable moved to %g, want 0.8", measure, o.X[3])
		}
	}
}

// TestPolishShrinks checks that points beyond reach only shorten the steps.
func TestPolishShrinks(t *testing.T) {
	// √x - 2 has its zero at 4 and is NaN below 0, where a first step from 90
	// lands.
	l := polishFrom(t, halfLine(), []Variable{{"x", -100, 100}}, Objective{}, []float64{0.95})
	if l.status != Converged || !near(l.value, 0, 1e-10) {
		t.Errorf("value = %g (%v), want 0, converged", l.value, l.status)
	}
	sc, err := newScale(&Objective{}, 1)
	if err != nil {
		t.Fatal(err)
	}
	p := newPolisher(newBox(halfLine(), []Variable{{"x", -100, 100}}), sc, 100, func() {})
	if l, ok := p.run([]float64{0.2}); ok {
		t.Errorf("run() from where the model is NaN = %v, want false", l)
	}
}

// TestPolishEdge approaches a minimum on the very edge of what can be evaluated.
func TestPolishEdge(t *testing.T) {
	edge := functionModel{Size{1, 1, 0}, func(x []float64, v *Values) bool {
		v.R[0] = x[0] + 1
		setRow(v.JR, 0, 1)
		return x[0] >= 0.3
	}}
	l := polishFrom(t, edge, square(1, 0, 1), Objective{}, []float64{0.9})
	if !l.status.Early() || !near(l.value, 1.3, 1e-9) {
		t.Errorf("value = %.12g (%v), want 1.3, not converged", l.value, l.status)
	}
}

// TestPolishNoise checks that residuals with a rounding of 1e-12, as iterated
// solutions have, still let a search converge.
func TestPolishNoise(t *testing.T) {
	inner := rationalFit(samples(-1, 1, 21))
	noisy := functionModel{inner.Size(), func(x []float64, v *Values) bool {
		ok := inner.Evaluate(x, v)
		for i, r := range v.R {
			v.R[i] = math.Round(r*1e12) / 1e12
		}
		return ok
	}}
	starts, u := NewHalton(3, 1), make([]float64, 3)
	for _, measure := range []Measure{RMS, Peak} {
		for i := range 50 {
			starts.Point(i, u)
			l := polishFrom(t, noisy, square(3, -0.9, 0.9), Objective{Measure: measure}, u)
			if l.status != Converged {
				t.Errorf("%v from start %d: status = %v, want converged", measure, i, l.status)
			}
		}
	}
}

func TestPolishInfeasible(t *testing.T) {
	m := withLimits(distanceTo(0, 0), 1, disc(-0.5))
	l := polishFrom(t, m, square(2, -2, 2), Objective{}, []float64{0.9, 0.8})
	if l.status != Infeasible || !l.broken || !near(l.violation, 0.5, 1e-6) {
		t.Errorf("status, violation = %v, %g, want infeasible by 0.5", l.status, l.violation)
	}
}

// TestPolishScale checks that units do not matter: the same problem in units
// of 1e-6 and residuals of 1e6 ends at the same place.
func TestPolishScale(t *testing.T) {
	for _, measure := range []Measure{RMS, Peak} {
		o := Objective{Measure: measure}
		plain := polishFrom(t, rationalFit(samples(-1, 1, 21)), square(3, -3, 3), o, []float64{0.6, 0.6, 0.5})
		scaled := polishFrom(t, rescaled(rationalFit(samples(-1, 1, 21)), 1e-6, 1e6), square(3, -3e-6, 3e-6), o, []float64{0.6, 0.6, 0.5})
		if !near(scaled.value, 1e6*plain.value, 1e-9*scaled.value) || !nearAll(scaled.u, plain.u, 1e-5) {
			t.Errorf("%v: scaled value, u = %.12g, %v, want %.12g, %v", measure, scaled.value, scaled.u, 1e6*plain.value, plain.u)
		}
	}
}

// rescaled is a model in variables of another unit, with residuals multiplied.
func rescaled(m Model, unit, factor float64) Model {
	x := make([]float64, m.Size().Variables)
	return functionModel{m.Size(), func(scaled []float64, v *Values) bool {
		for j := range x {
			x[j] = scaled[j] / unit
		}
		ok := m.Evaluate(x, v)
		for i := range v.R {
			v.R[i] *= factor
		}
		if v.JR != nil {
			v.JR.Scale(factor/unit, v.JR)
		}
		return ok
	}}
}
