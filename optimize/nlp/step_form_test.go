package nlp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// formObjectives has one objective for each form and way across groups.
var formObjectives = []struct {
	name string
	o    Objective
}{
	{"rms", Objective{Weights: []float64{1, 2, 3, 1, 1, 4}}},
	{"rms, mean", Objective{Groups: []Group{{2, 1, 0}, {4, 2, 0}}}},
	{"rms, worst", Objective{Across: Worst, Groups: []Group{{2, 1, 0}, {3, 1, 0}, {1, 1, 0}}}},
	{"rms, mean of wheels", Objective{Groups: []Group{{2, 1, 2}, {4, 2, 2}}}},
	{"rms, worst of wheels", Objective{Across: Worst, Groups: []Group{{2, 1, 2}, {4, 2, 2}}}},
	{"peak, mean of wheels", Objective{Measure: Peak, Groups: []Group{{2, 1, 2}, {4, 2, 2}}}},
	{"rms, worst without one", Objective{Across: Worst, Groups: []Group{{3, 1, 0}, {1, 0, 0}, {2, 1, 0}}}},
	{"peak", Objective{Measure: Peak, Weights: []float64{1, 2, 3, 1, 1, 4}}},
	{"peak, mean", Objective{Measure: Peak, Groups: []Group{{2, 1, 0}, {4, 2, 0}}}},
	{"peak, worst", Objective{Measure: Peak, Across: Worst, Groups: []Group{{2, 1, 0}, {1, 0, 0}, {3, 2, 0}}}},
}

// linearModel is r = A·x - b with random numbers.
func linearModel(rng *rand.Rand, residuals, variables int) Model {
	a := mat.NewDense(residuals, variables, normals(rng, residuals*variables))
	b := normals(rng, residuals)
	return functionModel{Size{variables, residuals, 0}, func(x []float64, v *Values) bool {
		for i := range b {
			v.R[i] = dot(a.RawRowView(i), x) - b[i]
		}
		if v.JR != nil {
			v.JR.Copy(a)
		}
		return true
	}}
}

// TestFormPrediction checks, for residuals that are linear, that the program's
// minimum is the cost where it says so; for the worst mean square, which the
// program has to first order in each group, that a small step makes the predicted reduction.
func TestFormPrediction(t *testing.T) {
	const variables, residuals = 3, 6
	for _, tt := range formObjectives {
		t.Run(tt.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(7, 8))
			for range 20 {
				now, model := startPoint(t, linearModel(rng, residuals, variables))
				sc, err := newScale(&tt.o, residuals)
				if err != nil {
					t.Fatal(err)
				}
				radius := 0.3
				if tt.o.Measure == RMS && tt.o.Across == Worst {
					radius = 1e-4
				}
				s := newStepper(newForm(sc), model.Size())
				before := s.form.cost(now.values.R)
				predicted := s.solve(now, radius)
				after := NewValues(model.Size())
				model.Evaluate(s.target, &after)
				if got := before - s.form.cost(after.R); !near(got, predicted, 1e-7*before) || !(predicted >= 0) {
					t.Errorf("reduction = %.12g, predicted %.12g", got, predicted)
				}
			}
		})
	}
}

// startPoint evaluates a model in the middle of the unit box.
func startPoint(t *testing.T, m Model) (*point, Model) {
	t.Helper()
	now := newPoint(m.Size())
	for j := range now.u {
		now.u[j] = 0.5
	}
	if !m.Evaluate(now.u, &now.values) {
		t.Fatal("Evaluate() = false in the middle of the box")
	}
	return now, m
}

// TestFormPull checks that the multipliers of the residuals are a subgradient
// of the cost: at the minimum of a linear model inside the box, Jᵀy = 0, and
// Euler's rule gives Σ yᵢrᵢ = cost for sizes, twice it for squares.
func TestFormPull(t *testing.T) {
	const variables, residuals = 2, 6
	for _, tt := range formObjectives {
		t.Run(tt.name, func(t *testing.T) {
			model := linearModel(rand.New(rand.NewPCG(9, 10)), residuals, variables)
			sc, err := newScale(&tt.o, residuals)
			if err != nil {
				t.Fatal(err)
			}
			wide := []Variable{{Min: -10, Max: 10}, {Min: -10, Max: 10}}
			p := newPolisher(newBox(model, wide), sc, 200, func() {})
			if l, ok := p.run([]float64{0.4, 0.7}); !ok || l.status != Converged {
				t.Fatalf("run() = %v, %t, want converged", l.status, ok)
			}
			s, v := p.step, &p.now.values
			s.solve(p.now, firstRadius)
			s.form.costGradient(s.y, v.R, s.program.lambda[2*variables:])
			var gradient mat.VecDense
			gradient.MulVec(v.JR.T(), mat.NewVecDense(residuals, s.y))
			if top := mat.Norm(&gradient, math.Inf(1)); !near(top, 0, 1e-5) {
				t.Errorf("gradient = %g, want 0", top)
			}
			want := s.form.cost(v.R)
			if tt.o.Measure == RMS {
				want *= 2
			}
			if got := dot(s.y, v.R); !near(got, want, 1e-6*want) {
				t.Errorf("Σ y r = %.10g, want %.10g", got, want)
			}
		})
	}
}
