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

// TestPropagateRefuses: what cannot be built, moved or drawn is an error, and no spread.
func TestPropagateRefuses(t *testing.T) {
	height, _, err := solver.FindParameter(textbook(t).Design(), "lowerBallJointHeight")
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name string
		harm func(*optimize.Series)
	}{
		{"no travel", func(s *optimize.Series) { s.Travels = nil }},
		{"no car", func(s *optimize.Series) { s.Changes = []solver.Change{{Parameter: height, Value: 900}} }},
		{"no such travel", func(s *optimize.Series) { s.Travels = []float64{0, 900} }},
		{"no such steer", func(s *optimize.Series) { s.From.Steer = 900 }},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := textbookSeries(t)
			tt.harm(s)
			if p, err := s.Propagate(); err == nil || p != nil {
				t.Errorf("Propagate = %v, %v, want an error alone", p, err)
			}
		})
	}
}

// TestPropagateRanks: the shares of the textbook's linkage, and what decides it.
func TestPropagateRanks(t *testing.T) {
	s := textbookSeries(t)
	p, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(p.Errors); n != 24 {
		t.Fatalf("%d quantities, want 24", n)
	}
	if k := s.Tolerances[p.Ranking()[0]].Key(); k != "tieRodOuter.z" {
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
