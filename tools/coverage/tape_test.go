package main

import (
	"strings"
	"testing"
)

// TestLocatedCars locates a hundred and thirty simulated cars of every template by the form, each from a
// template that is 50 mm off, with every slip by turns and marks that are exact or not, and as many by
// other measures: what is promised of thousands is kept by few but for chance.
func TestLocatedCars(t *testing.T) {
	e := locatedCars{Cars: 8, Seed: 11}
	f, err := e.run(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%+v", f.all)
	// Of some 4,500 coordinates, of which those of a car hang together, and 230 ends.
	if c := f.all.coverage(); !(c > 88 && c < 92) {
		t.Errorf("%.1f %% of the coordinates are held by their band of 90 %%", c)
	}
	if c := f.all.toeCoverage(); !(c > 84 && c < 96) {
		t.Errorf("%.1f %% of the toe changes are held by their band of 90 %%", c)
	}
	for _, p := range locatedPromises(f)[2:] {
		if !p.kept() {
			t.Error(p.String())
		}
	}
	var b strings.Builder
	if _, err := writeLocated(&b, e, f); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"8 jobs of each template", "| solid-axle-rack | 8 |", "| four floor marks | 13 |"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("page lacks %q:\n%s", want, b.String())
		}
	}
}
