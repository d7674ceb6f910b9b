package optimize_test

import (
	"math"
	"testing"

	"toewright/optimize"
)

// TestOutliersNamed spoils readings and asks that they are named and hardly move
// the advice.
func TestOutliersNamed(t *testing.T) {
	type error struct {
		set, reading int
		size         float64 // mm
	}
	for _, tt := range []struct {
		name   string
		errors []error
	}{
		{"one at the end of the travel", []error{{0, 0, 0.6}}},
		{"one in the middle", []error{{1, 5, -0.5}}},
		{"a decimal point", []error{{0, 3, 38}}},
		{"two in one set", []error{{1, 2, 1.5}, {1, 3, 1.4}}},
		{"three", []error{{0, 10, -0.8}, {1, 0, 2}, {1, 7, 0.5}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := newTruth(t, 17, 2.5)
			p := c.twoStacks(t, noise)
			q := heightRequest(t, c.base)
			sound := adviceOf(t, fitCar(t, p), q)
			for _, e := range tt.errors {
				p.Sets[e.set].Readings[e.reading].Value += e.size
			}
			f := fitCar(t, p)
			if len(f.Outliers) != len(tt.errors) {
				t.Fatalf("outliers are %+v, want %d", f.Outliers, len(tt.errors))
			}
			for i, e := range tt.errors {
				o := f.Outliers[i]
				r := p.Sets[e.set].Readings[e.reading]
				if o.Set != e.set || o.Reading != e.reading || o.Travel != r.Travel || o.Value != r.Value {
					t.Errorf("outlier %d is %+v, want reading %d of set %d", i, o, e.reading, e.set)
				}
				if !(math.Abs(o.Off-e.size) <= 5*noise) || !(math.Abs(o.Score) > 3) {
					t.Errorf("outlier %d is off by %.3f mm, score %.1f; want %.3f and beyond chance", i, o.Off, o.Score, e.size)
				}
			}
			if a := adviceOf(t, f, q); !(math.Abs(a.Best-sound.Best) < 0.3) {
				t.Errorf("best height moved from %.3f to %.3f, want less than 0.3 mm", sound.Best, a.Best)
			}
			if want := 22 - 2 - len(tt.errors); f.Freedom != want {
				t.Errorf("%d degrees of freedom, want %d", f.Freedom, want)
			}
		})
	}
}

// TestOutliersFalse counts sound readings that are left out: at a level of 1 %,
// 40 cars have 0.4 of them, and more than 4 by less than chance in 10,000.
func TestOutliersFalse(t *testing.T) {
	left := 0
	for seed := range uint64(40) {
		left += len(fitCar(t, newTruth(t, seed, 2.5).twoStacks(t, noise)).Outliers)
	}
	if left > 4 {
		t.Errorf("%d sound readings of 880 left out, want at most 4", left)
	}
}

// TestOutliersKeepTheirSet leaves every set two readings to stand on.
func TestOutliersKeepTheirSet(t *testing.T) {
	c := newTruth(t, 19, 2.5)
	p := &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{
		c.read(t, noise, nil, grid...), c.read(t, noise, nil, -30, 30),
	}}
	p.Sets[1].Readings[0].Value += 5
	for _, o := range fitCar(t, p).Outliers {
		if o.Set == 1 {
			t.Errorf("reading %d of a set of two was left out", o.Reading)
		}
	}
}
