package main

import (
	"encoding/json"
	"math"
	"testing"

	"toewright/internal/engine"
)

// coverTolerance is how far an end may be from that of the independent root finding of
// testdata/cases, mm or degrees; theirs is good to 1e-8.
const coverTolerance = 1e-6

// coversCase is a case of testdata/cases, intervals of set-ups within which a limit holds.
type coversCase struct {
	Candidate string
	Limit     json.Number
	Expected  []struct {
		Parameter       string
		Own, Low, High  float64
		LowEnd, HighEnd string
		AtLow, AtHigh   engine.CoverAt
	}
}

// TestCasesByCovers compares both ends of every interval of testdata/cases, and where they
// are decided, with those of the command, and with those that it names parameter by
// parameter.
func TestCasesByCovers(t *testing.T) {
	eachFile(t, called("cv"), func(t *testing.T, c *coversCase, file string) {
		args := []string{"covers", file, "--candidate", c.Candidate, "--limit", c.Limit.String()}
		var all engine.CoversResult
		ask(t, &all, args...)
		got := map[string]engine.Cover{}
		for _, one := range all.Covers {
			got[one.Parameter] = one
		}
		for _, want := range c.Expected {
			var alone engine.CoversResult
			ask(t, &alone, append(args, "--by", want.Parameter)...)
			for _, one := range []engine.Cover{got[want.Parameter], alone.Covers[0]} {
				for _, x := range [][2]float64{{float64(one.Own), want.Own}, {float64(one.Low), want.Low}, {float64(one.High), want.High}} {
					if !(math.Abs(x[0]-x[1]) <= coverTolerance) {
						t.Errorf("%s has %v, want %v", want.Parameter, x[0], x[1])
					}
				}
				if one.LowEnd != want.LowEnd || one.HighEnd != want.HighEnd || *one.AtLow != want.AtLow || *one.AtHigh != want.AtHigh {
					t.Errorf("%+v, want %+v", one, want)
				}
			}
		}
	})
}
