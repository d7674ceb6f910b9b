package study_test

import (
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// TestSideOfTheSolver takes every side that a file can state there and back by the word
// that both have for it, and a side that is not stated to the left.
func TestSideOfTheSolver(t *testing.T) {
	for i, side := range []study.Side{study.Left, study.Right} {
		if got := side.Solver(); got != solver.Sides[i] || study.Side(got.String()) != side {
			t.Errorf("%q: the solver has it as %v, want %v", side, got, solver.Sides[i])
		}
	}
	if got := study.Side("").Solver(); got != solver.Left {
		t.Errorf("no side stated: the solver has it as %v, want left", got)
	}
}
