package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"toewright/internal/engine"
)

// coverTolerance is how far an end may be from that of the independent root finding of
// testdata/cases, mm or degrees; theirs is good to 1e-8.
const coverTolerance = 1e-6

// TestCasesByCovers compares both ends of every interval of testdata/cases, and where they
// are decided, with those of the command, and with those that it names parameter by
// parameter.
func TestCasesByCovers(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/cases/cv*.json")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases of intervals: %v", err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		var c struct {
			Study     json.RawMessage
			Candidate string
			Limit     json.Number
			Expected  []struct {
				Parameter       string
				Own, Low, High  float64
				LowEnd, HighEnd string
				AtLow, AtHigh   engine.CoverAt
			}
		}
		if err := json.Unmarshal(data, &c); err != nil {
			t.Fatal(err)
		}
		file := writeFile(t, c.Study)
		var all engine.CoversResult
		ask(t, &all, "covers", file, "--candidate", c.Candidate, "--limit", c.Limit.String())
		got := map[string]engine.Cover{}
		for _, one := range all.Covers {
			got[one.Parameter] = one
		}
		for _, want := range c.Expected {
			var alone engine.CoversResult
			ask(t, &alone, "covers", file, "--candidate", c.Candidate, "--limit", c.Limit.String(), "--by", want.Parameter)
			for _, one := range []engine.Cover{got[want.Parameter], alone.Covers[0]} {
				for _, x := range [][2]float64{{float64(one.Own), want.Own}, {float64(one.Low), want.Low}, {float64(one.High), want.High}} {
					if !(math.Abs(x[0]-x[1]) <= coverTolerance) {
						t.Errorf("%s: %s has %v, want %v", path, want.Parameter, x[0], x[1])
					}
				}
				if one.LowEnd != want.LowEnd || one.HighEnd != want.HighEnd || *one.AtLow != want.AtLow || *one.AtHigh != want.AtHigh {
					t.Errorf("%s: %+v, want %+v", path, one, want)
				}
			}
		}
	}
}
