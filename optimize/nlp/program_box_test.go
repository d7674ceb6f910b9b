package nlp

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// randomBox returns a program of n variables whose only rows are bounds, some of
// them at the start.
func randomBox(rng *rand.Rand, n int) *program {
	p := &program{}
	p.reset(n)
	root := make([]float64, n*n)
	for i := range root {
		root[i] = rng.NormFloat64()
	}
	for i := range n {
		p.c[i] = rng.NormFloat64()
		for j := range n {
			for k := range n {
				p.h[i*n+j] += root[i*n+k] * root[j*n+k]
			}
		}
		p.h[i*n+i] += 0.1
		p.addRow(max(0, rng.Float64()-0.2))[i] = 1
		p.addRow(max(0, rng.Float64()-0.2))[i] = -1
	}
	return p
}

// TestBoxAgreesWithInteriorPoint compares the two methods on random programs.
func TestBoxAgreesWithInteriorPoint(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	for round := range 300 {
		p := randomBox(rng, 1+round%6)
		got, multipliers := p.solve()
		if !p.boxed {
			t.Fatalf("round %d: not solved by the active set", round)
		}
		got, multipliers = slices.Clone(got), slices.Clone(multipliers)
		want, wantMultipliers := p.solveInside()
		for j := range want {
			if !(math.Abs(got[j]-want[j]) <= 1e-5) {
				t.Fatalf("round %d: x %v, want %v", round, got, want)
			}
		}
		for j := range want { // where both bounds are at 0 only the difference is settled
			pull, wantPull := multipliers[2*j]-multipliers[2*j+1], wantMultipliers[2*j]-wantMultipliers[2*j+1]
			if !(math.Abs(pull-wantPull) <= 1e-4) {
				t.Fatalf("round %d: multipliers %v, want %v", round, multipliers, wantMultipliers)
			}
		}
	}
}

// TestBoxIsOptimal checks the conditions of an optimum to rounding: a gradient of
// zero for free variables, pointing outward for held ones, all within bounds.
func TestBoxIsOptimal(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 13))
	for round := range 300 {
		p := randomBox(rng, 1+round%6)
		x, multipliers := p.solve()
		for j := range x {
			g := p.c[j] + dot(p.h[j*p.n:(j+1)*p.n], x) + multipliers[2*j] - multipliers[2*j+1]
			if !(math.Abs(g) <= 1e-12) {
				t.Errorf("round %d: %g is left of the gradient by variable %d", round, g, j)
			}
			if x[j] > p.b[2*j] || -x[j] > p.b[2*j+1] {
				t.Errorf("round %d: variable %d at %g is outside %g to %g", round, j, x[j], -p.b[2*j+1], p.b[2*j])
			}
		}
	}
}

func TestOnlyBounds(t *testing.T) {
	p := randomBox(rand.New(rand.NewPCG(1, 1)), 3)
	if !p.onlyBounds() {
		t.Error("bounds are not known as such")
	}
	p.row(3)[0] = 0.5
	if p.onlyBounds() {
		t.Error("a slanting row counts as a bound")
	}
	p.row(3)[0] = 0
	p.addRow(1)[0] = 1
	if p.onlyBounds() {
		t.Error("a further row counts as a bound")
	}
}

func TestBoxRefuses(t *testing.T) {
	p := randomBox(rand.New(rand.NewPCG(1, 2)), 2)
	copy(p.h, []float64{1, 2, 2, 1})
	for i := range p.b {
		p.b[i] = 1
	}
	if p.box.solve(p) {
		t.Error("a saddle was taken for a minimum")
	}
}
