package solver

import (
	"math"
	"testing"
)

// polynomial is a curve whose values and slopes are known.
type polynomial []float64

func (p polynomial) at(s float64) (value, slope float64) {
	for i := len(p) - 1; i >= 0; i-- {
		value, slope = value*s+p[i], slope*s+value
	}
	return value, slope
}

// node returns the solution at s of a path whose unknown 0 follows p.
func (p polynomial) node(s float64) *node {
	n := &node{s: s}
	n.q[0], n.slope[0] = p.at(s)
	return n
}

func TestPredictContinuesPolynomials(t *testing.T) {
	curve := polynomial{3, -2, 0.5, 0.7, -0.3, 0.04}
	for _, tt := range []struct {
		name   string
		nodes  []float64 // oldest first, the last where the path stands
		next   float64
		degree int // of the curve that is continued exactly
	}{
		{"tangent", []float64{1}, 2, 1},
		{"cubic", []float64{0.5, 1}, 1.7, 3},
		{"quintic, even steps", []float64{0, 1, 2}, 3, 5},
		{"quintic, uneven steps", []float64{0, 1, 1.5}, 2.5, 5},
		{"quintic, downward", []float64{0, -1, -2}, -3, 5},
		{"close nodes are left out", []float64{-1, 1.9, 2}, 3, 1},
		{"old close nodes are left out", []float64{0.99, 1, 2}, 4, 3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			p := curve[:tt.degree+1]
			var tr trail
			last := len(tt.nodes) - 1
			for _, s := range tt.nodes[:last] {
				tr.add(p.node(s))
			}
			var q state
			tr.predict(p.node(tt.nodes[last]), tt.next, 1, &q)
			want, _ := p.at(tt.next)
			if !(math.Abs(q[0]-want) <= 1e-12*(1+math.Abs(want))) {
				t.Errorf("predicted %.15g at %g, want %.15g", q[0], tt.next, want)
			}
		})
	}
}

func TestTrailKeepsTheLastTwo(t *testing.T) {
	var tr trail
	for s := range 4 {
		tr.add(&node{s: float64(s)})
	}
	if tr.n != 2 || tr.nodes[0].s != 3 || tr.nodes[1].s != 2 {
		t.Errorf("trail of %d holds %g and %g, want 3 and 2", tr.n, tr.nodes[0].s, tr.nodes[1].s)
	}
}
