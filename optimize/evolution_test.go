package optimize

import (
	"math"
	"testing"
)

// newTestEvolution returns an evolution over a model with a counted report.
func newTestEvolution(t *testing.T, m Model, variables []Variable) *evolution {
	t.Helper()
	sc, err := newScale(&Objective{}, m.Size().Residuals)
	if err != nil {
		t.Fatal(err)
	}
	return newEvolution(newBox(m, variables), sc, 1, func() {})
}

func TestEvolutionFindsBasin(t *testing.T) {
	tests := []struct {
		name      string
		m         Model
		variables []Variable
		want      float64 // value of a basin that a polish takes to the minimum
	}{
		{"rosenbrock", rosenbrock(), square(2, -2, 2), 0.3},
		{"minimum outside the box", distanceTo(9, -9), square(2, -1, 1), math.Sqrt(64) + 0.01},
		{"disc", withLimits(distanceTo(3, 4), 1, disc(1)), square(2, -5, 5), 4/math.Sqrt2 + 0.1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			e := newTestEvolution(t, tt.m, tt.variables)
			best := e.run(600, 1)
			if best == nil || !(e.merit <= tt.want) {
				t.Fatalf("run() = %v with merit %g, want at most %g", best, e.merit, tt.want)
			}
			for j, u := range best {
				if !(u >= 0 && u <= 1) {
					t.Errorf("u[%d] = %g, want it in the unit box", j, u)
				}
			}
			if e.box.count > 601 {
				t.Errorf("%d evaluations, want no more than 600 and the start", e.box.count)
			}
		})
	}
}

// TestEvolutionBeyondReach checks that points that cannot be evaluated only cost
// their evaluation, and that none at all is no answer.
func TestEvolutionBeyondReach(t *testing.T) {
	e := newTestEvolution(t, halfLine(), []Variable{{"x", -100, 100}})
	if best := e.run(200, 1); best == nil || !(best[0] > 0.5) {
		t.Errorf("run() = %v, want a point in the upper half", best)
	}
	none := functionModel{Size{1, 1, 0}, func([]float64, *Values) bool { return false }}
	if best := newTestEvolution(t, none, square(1, 0, 1)).run(50, 1); best != nil {
		t.Errorf("run() = %v where nothing can be evaluated, want nil", best)
	}
}

func TestEvolutionStops(t *testing.T) {
	e := newTestEvolution(t, rosenbrock(), square(2, -2, 2))
	e.box.budget = 20
	e.run(1000, 1)
	if e.box.count > 21 {
		t.Errorf("%d evaluations, want it to stop at the budget of 20", e.box.count)
	}
}

// TestEvolutionInAnyUnit measures the same distance in a unit far smaller: the run finds
// the same place, and keeps to the limit, whatever figure the objective has.
func TestEvolutionInAnyUnit(t *testing.T) {
	const smaller = 1 << 30
	inUnits := func(times float64) *evolution {
		near := distanceTo(3, 4)
		m := withLimits(functionModel{near.Size(), func(x []float64, v *Values) bool {
			ok := near.Evaluate(x, v)
			for i := range v.R {
				v.R[i] *= times
			}
			return ok
		}}, 1, disc(1))
		sc, err := newScale(&Objective{}, m.Size().Residuals)
		if err != nil {
			t.Fatal(err)
		}
		return newEvolution(newBox(m, square(2, -5, 5)), sc, 5*times, func() {})
	}
	one, many := inUnits(1), inUnits(smaller)
	want, got := one.run(600, 1), many.run(600, 1)
	const basin = 1e-3 // of the box: violations are told apart less finely beside large figures
	if !nearAll(got, want, basin) || !near(many.merit/smaller, one.merit, basin) {
		t.Errorf("best %v with merit %g in small units, want %v with %g", got, many.merit/smaller, want, one.merit)
	}
	if x, y := 10*got[0]-5, 10*got[1]-5; !(math.Hypot(x, y) <= 1+1e-12) {
		t.Errorf("best (%g, %g) breaks the limit: it lies outside the unit circle", x, y)
	}
}
