package main

import (
	"context"
	"reflect"
	"testing"
)

// TestExperiment makes a small one: cars enough to see an advice that is wrong or a
// band that is far too narrow or too wide.
func TestExperiment(t *testing.T) {
	kinds, err := kindsOfCar()
	if err != nil {
		t.Fatal(err)
	}
	all, err := experiment{Cars: 2, Seed: 7}.run(context.Background(), kinds)
	if err != nil {
		t.Fatal(err)
	}
	var total findings
	for i := range all {
		total.join(&all[i])
	}
	if n := 2 * len(kinds); total.two.cars != n {
		t.Fatalf("%d cars, want %d", total.two.cars, n)
	}
	// 22 bands of 90 %: fewer than 15 of them hold by chance in 1 of 10,000.
	for _, tt := range []struct {
		name  string
		tally *tally
	}{{"one stack", &total.one}, {"two stacks", &total.two}, {"zeros freed", &total.freed}} {
		if tt.tally.covered < 15 || tt.tally.failed > 0 {
			t.Errorf("%s: %d of %d bands hold, %d failed", tt.name, tt.tally.covered, tt.tally.cars, tt.tally.failed)
		}
	}
	if total.two.within[0.75] != total.two.cars || total.roughTwo.within[1.5] != total.roughTwo.cars {
		t.Errorf("worst advice is off by %.2f mm, from a rough template by %.2f", total.two.worst, total.roughTwo.worst)
	}
	if total.named != total.spoils || total.unmoved != total.spoils {
		t.Errorf("of %d gross errors %d are named and %d leave the advice alone", total.spoils, total.named, total.unmoved)
	}
	if w := total.two.meanWidth(); !(w < 0.6) {
		t.Errorf("bands are %.2f mm wide, want less than 0.6", w)
	}
}

// TestExperimentRepeats draws the same cars whatever else is drawn.
func TestExperimentRepeats(t *testing.T) {
	kinds, err := kindsOfCar()
	if err != nil {
		t.Fatal(err)
	}
	k := &kinds[4]
	one, err := k.tryStacks(context.Background(), 1, 3, tapedSD)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := k.tryStacks(context.Background(), 1, 2, tapedSD); err != nil {
		t.Fatal(err)
	}
	two, err := k.tryStacks(context.Background(), 1, 3, tapedSD)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(one, two) {
		t.Errorf("the same car twice: %+v and %+v", one, two)
	}
	other, err := kinds[5].tryStacks(context.Background(), 1, 3, tapedSD)
	if err != nil {
		t.Fatal(err)
	}
	if reflect.DeepEqual(one.One, other.One) {
		t.Error("cars of two kinds came to the same")
	}
}

func TestExperimentCancelled(t *testing.T) {
	kinds, err := kindsOfCar()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := (experiment{Cars: 1, Seed: 1}).run(ctx, kinds[:1]); err == nil {
		t.Error("a cancelled experiment has findings, want an error")
	}
}
