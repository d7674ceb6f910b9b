package main

import (
	"testing"

	"toewright/internal/study"
)

// BenchmarkLocate locates a car of both sides.
func BenchmarkLocate(b *testing.B) {
	for _, sd := range []float64{0, 1} {
		for s := range 2 {
			j := newTapeJob(study.Templates()[0].Document(), &tapeSchemes[0], 3, 1, sd)
			tapeSlips[s].spoil(j)
			b.Run(tapeSlips[s].name, func(b *testing.B) {
				for b.Loop() {
					if _, err := j.locate(b.Context()); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
