package worker_test

import (
	"testing"

	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/wasm"
)

// TestFitTellsHowFarItIs: a fit of two stacks tells in steps how far it is, which never falls
// back, and is heard of through the bridge, which passes on what time there is for.
func TestFitTellsHowFarItIs(t *testing.T) {
	d := study.Template{Key: "strut-rack"}.Document()
	stacks := map[float64]bool{}
	for _, r := range d.Readings {
		stacks[r.Changes["tieRodOuterHeight"]] = true
	}
	if len(stacks) < 2 {
		t.Fatalf("%d stacks were read, want two", len(stacks))
	}
	var told, heard []float64
	hear := func(list *[]float64) func(engine.Progress) {
		return func(p engine.Progress) { *list = append(*list, p.Fraction) }
	}
	if _, err := engine.Fit(t.Context(), d, engine.FitOptions{Progress: hear(&told)}); err != nil {
		t.Fatal(err)
	}
	pool := worker.Team{Pool: wasm.NewLocalPool(2, worker.Handlers())}
	if _, err := pool.Call(t.Context(), calls.Fit, d, nil, hear(&heard)); err != nil {
		t.Fatal(err)
	}
	if distinct, widest := steps(t, told); distinct < 4 || widest > 0.35 || told[len(told)-1] < 0.7 {
		t.Errorf("%d steps, the widest of %g, to %v", distinct, widest, told)
	}
	if steps(t, heard); len(heard) == 0 {
		t.Error("nothing is heard through the bridge")
	}
}

// steps returns how often a progress grows, and by how much at most.
func steps(t *testing.T, heard []float64) (distinct int, widest float64) {
	t.Helper()
	for i := 1; i < len(heard); i++ {
		switch by := heard[i] - heard[i-1]; {
		case by < 0:
			t.Errorf("the progress falls from %g to %g", heard[i-1], heard[i])
		case by > 0:
			distinct++
			widest = max(widest, by)
		}
	}
	return distinct, widest
}
