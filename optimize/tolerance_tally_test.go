package optimize_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"toewright/optimize"
	"toewright/optimize/nlp"
)

// tallied returns the tally of values.
func tallied(origin float64, bits int, xs []float64) *optimize.Tally {
	t := optimize.NewTally(origin, bits)
	for _, x := range xs {
		t.Add(x)
	}
	return t
}

// TestTallyQuantiles holds quantiles of normal values against those of the values
// themselves: no farther off than a bin is wide.
func TestTallyQuantiles(t *testing.T) {
	const origin, sd = 0.3, 0.01
	r := rand.New(rand.NewPCG(1, 2))
	xs := make([]float64, 20_000)
	for i := range xs {
		xs[i] = origin + sd*r.NormFloat64()
	}
	shares := []float64{0, 0.025, 0.3, 0.5, 0.9, 0.99, 1}
	want := nlp.Quantiles(xs, shares...)
	for _, tt := range []struct {
		name string
		bits int
	}{{"7 bits", 7}, {"12 bits", 12}} {
		t.Run(tt.name, func(t *testing.T) {
			tally := tallied(origin, tt.bits, xs)
			for i, share := range shares {
				width := math.Abs(want[i]-origin) / float64(int(1)<<tt.bits)
				if got := tally.Quantile(share); !(math.Abs(got-want[i]) <= width) {
					t.Errorf("Quantile(%g) = %.9g, want %.9g within %.1g", share, got, want[i], width)
				}
			}
		})
	}
}

// TestTallyQuantilesOfMany holds the claim that the interpolation is finer than
// chance: the 97.5 % point of a normal density, counted exactly.
func TestTallyQuantilesOfMany(t *testing.T) {
	const values, sd = 1_000_000, 0.01
	tally := optimize.NewTally(0, 7)
	for i := range values {
		tally.Add(sd * math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/values-1))
	}
	const chance = 6.7e-5 // standard deviation of the 97.5 % point of 10⁹ normal values over theirs, sqrt(p(1-p)/n)/density, rounded up to that of 95 %
	if got := tally.Quantile(0.975) / sd; !(math.Abs(got-1.959964) <= chance) {
		t.Errorf("97.5 %% point at %.6f standard deviations, want 1.959964 within %g", got, chance)
	}
}

func TestTallyEdges(t *testing.T) {
	for _, tt := range []struct {
		name string
		xs   []float64
		want float64 // the median
	}{
		{"none", nil, math.NaN()},
		{"the origin", []float64{2, 2, 2}, 2},
		{"nothing but dust", []float64{2 + 1e-13, 2 - 1e-13}, 2},
		{"out of all bins", []float64{1e9, 1e9}, 2 + 256.5},
		{"infinite, below", []float64{math.Inf(-1)}, 2 - 256.5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			tally := tallied(2, 7, tt.xs)
			got := tally.Quantile(0.5)
			if math.IsNaN(tt.want) != math.IsNaN(got) || math.Abs(got-tt.want) > 1 {
				t.Errorf("median %g, want %g", got, tt.want)
			}
			if tally.Total() != len(tt.xs) {
				t.Errorf("%d values counted of %d", tally.Total(), len(tt.xs))
			}
		})
	}
}

// TestTallyJoins: lots joined in any order are the tally of all, and so are counts
// put in again.
func TestTallyJoins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bits := rapid.IntRange(1, 12).Draw(t, "bits")
		xs := rapid.SliceOf(rapid.Float64Range(-3, 3)).Draw(t, "values")
		cut := rapid.IntRange(0, len(xs)).Draw(t, "cut")
		want := tallied(0.1, bits, xs)
		joined := tallied(0.1, bits, xs[cut:])
		joined.Join(tallied(0.1, bits, xs[:cut]))
		again := optimize.NewTally(0.1, bits)
		for bin, n := range want.Counts() {
			if err := again.Put(bin, n); err != nil {
				t.Fatal(err)
			}
		}
		for name, got := range map[string]*optimize.Tally{"joined": joined, "put in again": again} {
			if !reflect.DeepEqual(got, want) {
				t.Errorf("%s: %v, want %v", name, got, want)
			}
		}
	})
}

// TestTallyCountsAscend: bins come from the least value up, so that the values of
// one bin are all below those of the next.
func TestTallyCountsAscend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		xs := rapid.SliceOf(rapid.Float64Range(-1e-3, 1e-3)).Draw(t, "values")
		tally := tallied(0, 5, xs)
		slices.Sort(xs)
		at, last := 0, math.MinInt
		for bin, n := range tally.Counts() {
			lot := tallied(0, 5, xs[at:at+n])
			for only, m := range lot.Counts() {
				if only != bin || m != n || bin <= last {
					t.Fatalf("values %v: %d in bin %d after bin %d, want %d in bin %d", xs[at:at+n], m, only, last, n, bin)
				}
			}
			at, last = at+n, bin
		}
		if at != len(xs) {
			t.Fatalf("%d of %d values counted", at, len(xs))
		}
	})
}

func TestTallyRefuses(t *testing.T) {
	tally := tallied(0, 3, []float64{1})
	for _, tt := range []struct {
		name       string
		bin, count int
	}{
		{"no count", 1, 0},
		{"a negative count", 1, -1},
		{"a bin too high", 48<<3 + 1, 1},
		{"a bin too low", -48<<3 - 1, 1},
		{"the lowest number", math.MinInt, 1},
		{"more than can be counted", 1, math.MaxInt},
	} {
		if err := tally.Put(tt.bin, tt.count); err == nil {
			t.Errorf("%s: accepted", tt.name)
		}
	}
	if tally.Total() != 1 {
		t.Errorf("%d values after what was refused, want 1", tally.Total())
	}
}
