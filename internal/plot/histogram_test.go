package plot

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestBins(t *testing.T) {
	tests := []struct {
		name   string
		values []float64
		most   int
		edges  []float64
		counts []int
	}{
		{"last edge included", []float64{0, 0.5, 1, 1.5, 2, nan}, 2, []float64{0, 1, 2}, []int{2, 3}},
		{"all alike", []float64{3, 3}, 5, nil, nil},
		{"gaps only", []float64{nan}, 5, nil, nil},
		{"no bins asked for", []float64{0, 1}, 0, nil, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			edges, counts := Bins(tt.values, tt.most)
			if !slices.Equal(edges, tt.edges) || !slices.Equal(counts, tt.counts) {
				t.Errorf("Bins(%v, %d) = %v, %v, want %v, %v", tt.values, tt.most, edges, counts, tt.edges, tt.counts)
			}
		})
	}
}

func TestBinsCountEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(-5, 5), 2, 100).Draw(t, "values")
		edges, counts := Bins(values, 12)
		if edges == nil {
			return // all alike, or as near as float64 gets
		}
		total := 0
		for i, n := range counts {
			total += n
			for _, v := range values {
				if n == 0 && v > edges[i]+1e-9 && v < edges[i+1]-1e-9 {
					t.Fatalf("%v is not counted between %v and %v", v, edges[i], edges[i+1])
				}
			}
		}
		if total != len(values) || len(counts) > 12 {
			t.Fatalf("%d values of %d in %d bins", total, len(values), len(counts))
		}
	})
}

func TestAppendBins(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	got := f.AppendBins(nil, []float64{0, 5, 10, 15}, []int{2, 0, 3}).String()
	if want := "M0 80L50 80L50 100L0 100Z"; got != want {
		t.Errorf("AppendBins = %q, want %q: neither empty bins nor those outside", got, want)
	}
	wantWithin(t, f.AppendBins(nil, []float64{-5, 5, 15}, []int{30, 3}), f.Area)
}
