package solver

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestGibbsRate: the rate of a Gibbs vector at an angular velocity undoes spin.
func TestGibbsRate(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for range 100 {
		g, dg := randomVec(r, 0.5), randomVec(r, 1)
		if got := gibbsRate(g, spin(g, dg)); !(r3.Norm(r3.Sub(got, dg)) <= 1e-14*(1+r3.Norm2(g))*(1+r3.Norm(dg))) {
			t.Errorf("gibbsRate(spin(%v)) = %v", dg, got)
		}
	}
}
