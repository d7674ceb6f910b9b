package optimize

import (
	"slices"
	"testing"

	"toewright/solver"
)

// TestMisreadings: what was meant is among what the number as written may stand for.
func TestMisreadings(t *testing.T) {
	for _, tt := range []struct {
		slip           string
		written, meant float64
	}{
		{"decimal point", 42.5, 4.25},
		{"sign", -4.25, 4.25},
		{"inches", 0.25, 6.35},
		{"digits exchanged", 4.52, 4.25},
		{"digits exchanged before the point", 21.5, 12.5},
		{"digits exchanged of a negative reading", -4.52, -4.25},
		{"digit too many", 4.225, 4.25},
		{"digit too many in front", 14.25, 4.25},
		{"digit too many of a negative reading", -4.255, -4.25},
	} {
		got := misreadings(tt.written)
		if !slices.ContainsFunc(got, func(x float64) bool { return near(x, tt.meant, 1e-12) }) {
			t.Errorf("%s: %g may stand for %v, want %g among them", tt.slip, tt.written, got, tt.meant)
		}
		if slices.Contains(got, tt.written) {
			t.Errorf("%s: %g may stand for itself", tt.slip, tt.written)
		}
	}
	if got := misreadings(0); got != nil {
		t.Errorf("0 may stand for %v, want nothing", got)
	}
}

// TestSpread is the width of the middle half: of five readings in even steps two steps.
func TestSpread(t *testing.T) {
	s := ReadingSet{Readings: []Reading{{Value: 7}, {Value: 1}, {Value: 5}, {Value: 3}, {Value: 9}}}
	if got := s.spread(); !near(got, 4, 1e-12) {
		t.Errorf("spread of 1, 3, 5, 7 and 9 = %.12g mm, want 4", got)
	}
}

// TestSwaps: only what was read alike on both sides can have been exchanged.
func TestSwaps(t *testing.T) {
	spacer := []solver.Change{{Parameter: solver.Parameter{Key: "tieRodOuterHeight"}, Value: -6}}
	set := func(side solver.Side, changes []solver.Change, readings int) ReadingSet {
		return ReadingSet{Side: side, Changes: changes, Readings: make([]Reading, readings)}
	}
	p := &GaugeFit{Sets: []ReadingSet{
		set(solver.Left, nil, 5), set(solver.Left, nil, 5), set(solver.Right, spacer, 5), set(solver.Right, nil, 4), set(solver.Right, nil, 5),
	}}
	var pairs [][2]int
	for i := range p.Sets {
		for _, h := range p.swaps(i) {
			pairs = append(pairs, [2]int{h.slip.Set, h.slip.Other})
		}
	}
	if want := [][2]int{{0, 4}, {1, 4}}; !slices.Equal(pairs, want) {
		t.Errorf("pairs that can have been exchanged are %v, want %v", pairs, want)
	}
}
