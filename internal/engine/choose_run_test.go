package engine

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// shelfOf returns a catalogue of six slots, each of so many parts.
func shelfOf(parts int) string {
	var list []string
	for slot, key := range strings.Fields("tieRodOuterHeight tieRodInnerHeight steeringArmLength tieRodInnerLateral steeringArmOffset upperBallJointHeight") {
		for i := range parts {
			list = append(list, fmt.Sprintf(`{"slot": "%d", "name": "%d", "price": %d, "changes": {"%s": %g}}`, slot, i, 10*(i+1), key, 0.5*float64(i+1)))
		}
	}
	return `"catalogue": [` + strings.Join(list, ",") + `],`
}

// TestChooseCancelled stops at its first report a choice among a million
// combinations, which would take seconds: the best so far is there, and what it
// says holds together.
func TestChooseCancelled(t *testing.T) {
	const combinations = 1_000_000
	ctx, cancel := context.WithCancel(context.Background())
	var reports []Progress
	r, err := Choose(ctx, document(t, shelfOf(9)), ChooseOptions{Progress: func(p Progress) {
		reports = append(reports, p)
		cancel()
	}})
	if err != nil {
		t.Fatal(err)
	}
	if r.Tried == 0 || r.Tried > combinations/10 || r.Built > r.Tried || len(r.Best) != DefaultListed {
		t.Errorf("tried %d, built %d, %d listed", r.Tried, r.Built, len(r.Best))
	}
	if p := reports[0]; p.Evaluations == 0 || p.Fraction != float64(p.Evaluations)/combinations {
		t.Errorf("first report %+v of %d combinations", p, combinations)
	}
	if _, err := Choose(ctx, document(t, shelfOf(9)), ChooseOptions{}); !isContext(err) {
		t.Errorf("cancelled beforehand: error %v", err)
	}
}

// TestRunsInShardsAreTheWhole: what comes of the shards of each call covers every
// car, combination and cell once.
func TestRunsInShardsAreTheWhole(t *testing.T) {
	d := document(t, shelfOf(1)+toleranced+`"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -9, "max": 9}, {"parameter": "caster", "min": 1, "max": 5}]},`)
	tolerance, err := NewToleranceRun(d, ToleranceOptions{Cars: new(1_000_000_000)})
	if err != nil {
		t.Fatal(err)
	}
	choose, err := NewChooseRun(d, ChooseOptions{})
	if err != nil {
		t.Fatal(err)
	}
	grid, err := NewMapRun(d, MapOptions{Columns: new(3), Rows: new(5)})
	if err != nil {
		t.Fatal(err)
	}
	const shards = 7
	cars, combinations, cells := 0, 0, 0
	for i := range shards {
		s := Shard{Index: i, Of: shards}
		a, b := tolerance.Span(s), choose.Span(s)
		all, c := grid.Cells(s)
		if a.First != cars || b.First != combinations || c.First != cells || all != 15 {
			t.Fatalf("shard %d begins at car %d, combination %d, cell %d of %d", i, a.First, b.First, c.First, all)
		}
		cars, combinations, cells = a.End, b.End, c.End
	}
	if cars != 1_000_000_000 || combinations != 64 || cells != 15 {
		t.Errorf("shards end at car %d, combination %d, cell %d", cars, combinations, cells)
	}
}
