package referee

import (
	"strings"
	"testing"
)

// keepsAll fails where a front lost a design to one that is searched anew at each level.
func keepsAll(t testing.TB, f *Front) {
	lost, warm, cold, err := f.Lost()
	if err != nil {
		t.Fatal(err)
	}
	if len(warm) == 0 || len(cold) < 2 {
		t.Errorf("%s: %d designs, and %d searched anew: want a front", f.Name, len(warm), len(cold))
	}
	for _, d := range lost {
		t.Errorf("%s: no match for %.6g at an aim of %.6g, %.5g: has %+v", f.Name, d.Value, d.Aim, d.Values, warm)
	}
}

// TestNoDesignIsLost holds five small fronts against those searched anew at each level; the
// benchmark holds all.
func TestNoDesignIsLost(t *testing.T) {
	fronts, err := Fronts("../../testdata/studies")
	if err != nil {
		t.Fatal(err)
	}
	if len(fronts) < 50 {
		t.Errorf("%d fronts, want 50 at least", len(fronts))
	}
	held := 0
	for i := range fronts {
		if f := &fronts[i]; strings.HasPrefix(f.Name, "double-wishbone-rack") && len(f.TradeOff.Free) <= 3 {
			held++
			keepsAll(t, f)
		}
	}
	if held != 5 {
		t.Errorf("%d fronts were held against others, want 5", held)
	}
}

// BenchmarkFronts holds every front against one searched anew at each level.
func BenchmarkFronts(b *testing.B) {
	fronts, err := Fronts("../../testdata/studies")
	if err != nil {
		b.Fatal(err)
	}
	for i := range fronts {
		b.Run(fronts[i].Name, func(b *testing.B) {
			for b.Loop() {
				keepsAll(b, &fronts[i])
			}
		})
	}
}
