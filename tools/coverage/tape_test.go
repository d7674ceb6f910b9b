package main

import (
	"testing"

	"toewright/internal/study"
)

// TestTapeJobs locates a hundred and four simulated cars of every template, each from a
// template that is 50 mm off, with every slip by turns and marks that are exact or not:
// slips are named and harmless, and bands hold as often as they say.
func TestTapeJobs(t *testing.T) {
	var all tapeOutcome
	for i, template := range study.Templates() {
		for n := range 8 {
			j := newTapeJob(&template, 11, 100*i+n, float64(n%2))
			tapeSlips[(i+n)%len(tapeSlips)].spoil(j)
			o, err := j.locate(t.Context())
			if err != nil {
				t.Fatalf("%s, job %d: %v", template.Key, n, err)
			}
			if o.lost > 0 || o.slips > o.named {
				t.Logf("%s, job %d: slips %v: %+v", template.Key, n, j.slipped, o)
			}
			all.join(o)
		}
	}
	t.Logf("%+v", all)
	// Of some 4,500 coordinates, of which those of a car hang together, and 400 ends.
	if c := all.coverage(); !(c > 88 && c < 92) {
		t.Errorf("%.1f %% of the coordinates are held by their band of 90 %%", c)
	}
	if c := percent(all.endsHeld, all.ends); !(c > 84 && c < 96) {
		t.Errorf("%.1f %% of the toe changes are held by their band of 90 %%", c)
	}
	if c := percent(all.named, all.slips); !(c >= 95) || all.left > 4 {
		t.Errorf("%.1f %% of %d slips are named, %d sound measures left out", c, all.slips, all.left)
	}
	if all.lost > 1 {
		t.Errorf("%d jobs landed elsewhere", all.lost)
	}
}
