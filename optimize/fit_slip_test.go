package optimize_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// TestSlips writes sound readings down wrongly.
func TestSlips(t *testing.T) {
	for _, tt := range []struct {
		name  string
		wrong func(sets []optimize.ReadingSet)
		want  []optimize.Slip
		words string
	}{
		{"nothing", func([]optimize.ReadingSet) {}, nil, ""},
		{"decimal point", func(s []optimize.ReadingSet) { s[0].Readings[3].Value *= 10 },
			[]optimize.Slip{{Kind: optimize.DigitSlip, Set: 0, Other: -1, First: 3, End: 4}}, "readings 1 (left), travel -20 mm"},
		{"sign reversed half way", func(s []optimize.ReadingSet) { negate(s[1].Readings[6:]) },
			[]optimize.Slip{{Kind: optimize.SignSlip, Set: 1, Other: -1, First: 6, End: 11}}, "readings 2 (left), travels 10 to 50 mm: the sign"},
		{"sign reversed throughout", func(s []optimize.ReadingSet) { negate(s[1].Readings) },
			[]optimize.Slip{{Kind: optimize.SignSlip, Set: 1, Other: -1, First: 0, End: 11}}, "readings 2 (left): the sign"},
		{"inches", func(s []optimize.ReadingSet) { scale(s[1].Readings, 1/25.4) },
			[]optimize.Slip{{Kind: optimize.InchSlip, Set: 1, Other: -1, First: 0, End: 11}}, "readings 2 (left): the readings are likely in the other unit"},
		{"bump and droop exchanged", func(s []optimize.ReadingSet) { turn(s[1].Readings, -1) },
			[]optimize.Slip{{Kind: optimize.TravelSignSlip, Set: 1, Other: -1, First: 0, End: 11}}, "bump and droop"},
		{"travels in inches", func(s []optimize.ReadingSet) { turn(s[0].Readings, 1/25.4) },
			[]optimize.Slip{{Kind: optimize.TravelInchSlip, Set: 0, Other: -1, First: 0, End: 11}}, "the travels are likely in the other unit"},
		{"two slips", func(s []optimize.ReadingSet) { s[0].Readings[2].Value /= 10; scale(s[1].Readings, 1/25.4) },
			[]optimize.Slip{{Kind: optimize.DigitSlip, Set: 0, Other: -1, First: 2, End: 3}, {Kind: optimize.InchSlip, Set: 1, Other: -1, First: 0, End: 11}}, ""},
		{"two decimal points", func(s []optimize.ReadingSet) { s[0].Readings[2].Value *= 10; s[0].Readings[9].Value /= 10 },
			[]optimize.Slip{{Kind: optimize.DigitSlip, Set: 0, Other: -1, First: 2, End: 3}, {Kind: optimize.DigitSlip, Set: 0, Other: -1, First: 9, End: 10}}, ""},
		{"millimetres taken for inches", func(s []optimize.ReadingSet) { scale(s[1].Readings, 25.4) },
			[]optimize.Slip{{Kind: optimize.InchSlip, Set: 1, Other: -1, First: 0, End: 11}}, "in the other unit"},
		{"one in inches", func(s []optimize.ReadingSet) { s[1].Readings[9].Value /= 25.4 },
			[]optimize.Slip{{Kind: optimize.InchSlip, Set: 1, Other: -1, First: 9, End: 10}}, "inches and millimetres are mixed"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := newTruth(t, 43, 2.5)
			p := c.twoStacks(t, noise)
			rounded(p.Sets)
			sound := copied(p.Sets)
			tt.wrong(p.Sets)
			got, put, err := p.Slips(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			checkSlips(t, got, tt.want)
			if len(got) > 0 && !strings.Contains(got[0].Words(p.Sets), tt.words) {
				t.Errorf("words are %q, want %q in them", got[0].Words(p.Sets), tt.words)
			}
			for i := range put {
				for k, r := range put[i].Readings {
					want := sound[i].Readings[k]
					if !(math.Abs(r.Value-want.Value) <= 1e-9) || !(math.Abs(r.Travel-want.Travel) <= 1e-9) {
						t.Errorf("set %d, reading %d put right is %v, want %v", i, k, r, want)
					}
				}
			}
		})
	}
}

// checkSlips compares slips but for the numbers of a single reading.
func checkSlips(t *testing.T, got, want []optimize.Slip) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("slips are %+v, want %+v", got, want)
	}
	for i := range got {
		g := got[i]
		g.Value, g.Likely = 0, 0
		if g != want[i] {
			t.Errorf("slip %d is %+v, want %+v", i, got[i], want[i])
		}
	}
}

// TestSlipsSwapped exchanges left and right of the second set-up, on a car whose
// sides differ.
func TestSlipsSwapped(t *testing.T) {
	c := newTruth(t, 47, 2.5)
	other := newTruth(t, 53, 2.5)
	p := c.twoStacks(t, noise)
	for _, s := range other.twoStacks(t, noise).Sets {
		s.Side = solver.Right
		p.Sets = append(p.Sets, s)
	}
	p.Sets[1].Readings, p.Sets[3].Readings = p.Sets[3].Readings, p.Sets[1].Readings
	got, put, err := p.Slips(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 1 || got[0].Kind != optimize.SwappedSidesSlip {
		t.Fatalf("slips are %+v, want sides swapped", got)
	}
	// Either pair may be the one that was exchanged: the prior is the same for
	// both sides.
	if pair := [2]int{got[0].Set, got[0].Other}; pair != [2]int{1, 3} && pair != [2]int{0, 2} {
		t.Errorf("sets %v exchanged, want 1 and 3 or 0 and 2", pair)
	}
	if f := fitCar(t, &optimize.GaugeFit{Base: p.Base, Sets: put}); f.Verdict() != optimize.Explained {
		t.Errorf("put right, the readings have a chance of %.3g", f.Chance())
	}
	if words := got[0].Words(p.Sets); !strings.Contains(words, "left and right swapped") {
		t.Errorf("words are %q", words)
	}
}

// TestSlipsNotEveryOutlier finds no slip of the pen in readings that are off by
// what no such slip makes.
func TestSlipsNotEveryOutlier(t *testing.T) {
	c := newTruth(t, 43, 2.5)
	for _, off := range []float64{-0.9, 1.3} {
		for i := 0; i < len(grid); i += 3 {
			p := c.twoStacks(t, noise)
			rounded(p.Sets)
			p.Sets[0].Readings[i].Value += off
			got, _, err := p.Slips(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range got {
				right := p.Sets[0].Readings[i].Value - off
				if s.Set != 0 || s.First != i || !(math.Abs(s.Likely-right) <= 5*noise) {
					t.Errorf("%g mm at travel %g: %+v, want none, or the right number", off, grid[i], s)
				}
			}
		}
	}
}

func negate(rs []optimize.Reading) { scale(rs, -1) }

func scale(rs []optimize.Reading, k float64) {
	for i := range rs {
		rs[i].Value *= k
	}
}

func turn(rs []optimize.Reading, k float64) {
	for i := range rs {
		rs[i].Travel *= k
	}
}

// rounded reads the gauges to 0.01 mm.
func rounded(sets []optimize.ReadingSet) {
	for i := range sets {
		for k := range sets[i].Readings {
			r := &sets[i].Readings[k]
			r.Value = math.Round(100*r.Value) / 100
		}
	}
}

func copied(sets []optimize.ReadingSet) []optimize.ReadingSet {
	out := slices.Clone(sets)
	for i := range out {
		out[i].Readings = slices.Clone(out[i].Readings)
	}
	return out
}

func TestHystereses(t *testing.T) {
	c := newTruth(t, 59, 2.5)
	up, down := c.read(t, 0, nil, grid...), c.read(t, 0, nil, grid...)
	up.Run, down.Run = optimize.BumpRun, optimize.DroopRun
	scaleZero := func(rs []optimize.Reading) {
		for i := range rs {
			rs[i].Value += 1.1 // another zero is no play
		}
	}
	scaleZero(down.Readings)
	slices.Reverse(down.Readings)
	p := &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{up, down}}
	h := p.Hystereses()
	if len(h) != 1 || !(math.Abs(h[0].Gap) <= 1e-9) {
		t.Fatalf("hystereses are %+v, want one of nothing", h)
	}
	down.Readings[0].Value -= 0.55 // bump 50, the mean of 11 takes 0.05
	h = p.Hystereses()
	if h[0].Sets != [2]int{0, 1} || h[0].Travel != 50 || !(math.Abs(h[0].Gap-0.5) <= 1e-9) || !(h[0].Score > 6) {
		t.Errorf("hysteresis is %+v, want 0.5 mm at 50", h[0])
	}
}
