package optimize_test

import (
	"math"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// textbookSeries has every coordinate but the wheel centre's off by 0.5 mm, one
// standard deviation, normal.
func textbookSeries(t testing.TB) *optimize.Series {
	t.Helper()
	s := &optimize.Series{Judge: optimize.Judge{Base: textbook(t), Hold: solver.HoldAll, Sides: solver.LeftOnly}, Seed: 1}
	var err error
	if s.Travels, err = solver.Grid(50, 50, 10); err != nil {
		t.Fatal(err)
	}
	for _, p := range solver.Parameters(s.Base.Design()) {
		if strings.Contains(p.Key, ".") && !strings.HasPrefix(p.Key, "wheelCentre") {
			s.Tolerances = append(s.Tolerances, optimize.Tolerance{Parameter: p, Distribution: optimize.Distribution{Spread: 0.5}})
		}
	}
	return s
}

// TestPropagateRanks: the shares of the textbook's linkage, and what decides it.
func TestPropagateRanks(t *testing.T) {
	p, err := textbookSeries(t).Propagate()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(p.Errors); n != 24 {
		t.Fatalf("%d quantities, want 24", n)
	}
	if k := p.Errors[p.Ranking()[0]].Key(); k != "tieRodOuter.z@left" {
		t.Errorf("largest contributor %s, want the outer tie rod ball's height", k)
	}
	sum := 0.0
	for _, x := range p.Shares {
		sum += x
	}
	if !(math.Abs(sum-1) <= 1e-12) {
		t.Errorf("shares add up to %g", sum)
	}
}
