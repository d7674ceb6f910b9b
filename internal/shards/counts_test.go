package shards

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"toewright/optimize"
)

func TestCountsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := optimize.NewTally(0.5, 4)
		for _, x := range rapid.SliceOf(rapid.Float64Range(-2, 3)).Draw(t, "values") {
			want.Add(x)
		}
		got := optimize.NewTally(0.5, 4)
		if err := countsOf(want).putInto(got, want.Total()); err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("counts %v come back as %v", countsOf(want), countsOf(got))
		}
	})
}

func TestCountsRefused(t *testing.T) {
	for _, tt := range []struct {
		name  string
		c     counts
		total int
		part  string // of the error
	}{
		{"half a pair", counts{1, 2, 3}, 2, "ends within a pair"},
		{"a bin again", counts{1, 2, 0, 1}, 3, "goes 0 bins on"},
		{"a bin back", counts{1, 2, -1, 1}, 3, "goes -1 bins on"},
		{"a leap", counts{math.MaxInt, 1}, 1, "bins on"},
		{"a leap down", counts{math.MinInt, 1}, 1, "bins on"},
		{"beyond all bins", counts{maxStep, 1}, 1, "in bin 16777216"},
		{"none", counts{1, 0}, 0, "a count of 0"},
		{"fewer than none", counts{1, -5, 1, 6}, 1, "a count of -5"},
		{"more than can be counted", counts{1, math.MaxInt, 1, 1}, 0, "a count of 1"},
		{"too few", counts{1, 2}, 3, "counts 2 cars, want the 3 built"},
		{"too many", counts{1, 2}, 1, "counts 2 cars, want the 1 built"},
	} {
		if err := tt.c.putInto(optimize.NewTally(0, 7), tt.total); err == nil || !strings.Contains(err.Error(), tt.part) {
			t.Errorf("%s: error %v, want %q", tt.name, err, tt.part)
		}
	}
}
