package worker_test

import (
	"testing"

	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/wasm"
)

// TestFitTellsHowFarItIs: a fit of two stacks is heard of through the bridge as a search is,
// often, and never falls back.
func TestFitTellsHowFarItIs(t *testing.T) {
	d := study.Template{Key: "strut-rack"}.Document()
	stacks := map[float64]bool{}
	for _, r := range d.Readings {
		stacks[r.Changes["tieRodOuterHeight"]] = true
	}
	if len(stacks) < 2 {
		t.Fatalf("%d stacks were read, want two", len(stacks))
	}
	pool := worker.Team{Pool: wasm.NewLocalPool(2, worker.Handlers())}
	var heard []float64
	if _, err := pool.Call(t.Context(), calls.Fit, d, nil, func(p engine.Progress) { heard = append(heard, p.Fraction) }); err != nil {
		t.Fatal(err)
	}
	distinct, widest := 0, 0.0
	for i := 1; i < len(heard); i++ {
		switch by := heard[i] - heard[i-1]; {
		case by < 0:
			t.Errorf("the progress falls from %g to %g", heard[i-1], heard[i])
		case by > 0:
			distinct++
			widest = max(widest, by)
		}
	}
	if distinct < 4 || widest > 0.35 || len(heard) > 0 && heard[len(heard)-1] < 0.7 {
		t.Errorf("%d steps, the widest of %g, to %v", distinct, widest, heard)
	}
}
