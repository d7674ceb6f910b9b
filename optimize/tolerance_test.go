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

// TestPropagateTextbook: u = 0.5 mm on all 24 coordinates of the textbook's
// linkage gives 0.062122 deg at -50 mm and 0.049604 deg at +50 mm (recomputed by
// central differences of independent solvers).
func TestPropagateTextbook(t *testing.T) {
	p, err := textbookSeries(t).Propagate()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(p.Errors); n != 24 {
		t.Fatalf("%d quantities, want 24", n)
	}
	for _, tt := range []struct {
		name string
		at   int
		want float64
	}{{"-50 mm", 0, 0.062122}, {"+50 mm", 10, 0.049604}, {"0 mm", 5, 0}} {
		if got := solver.Angle(p.SD[tt.at]).Degrees(); !(math.Abs(got-tt.want) <= 1e-6) {
			t.Errorf("sd at %s = %.6f deg, want %.6f", tt.name, got, tt.want)
		}
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
