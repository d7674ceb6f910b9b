package plot

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestUndominated(t *testing.T) {
	tests := []struct {
		name   string
		xs, ys []float64
		want   []int
	}{
		{"a staircase", []float64{3, 1, 2}, []float64{1, 3, 2}, []int{1, 2, 0}},
		{"one rules", []float64{3, 1, 2}, []float64{3, 1, 2}, []int{1}},
		{"same x", []float64{1, 1}, []float64{2, 1}, []int{1}},
		{"same y", []float64{1, 2}, []float64{1, 1}, []int{0}},
		{"alike", []float64{1, 1}, []float64{1, 1}, []int{0}},
		{"gap", []float64{0, 1}, []float64{nan, 1}, []int{1}},
		{"nothing", nil, nil, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Undominated(tt.xs, tt.ys); !slices.Equal(got, tt.want) {
				t.Errorf("Undominated = %v, want %v", got, tt.want)
			}
		})
	}
}

// A point is left out exactly where another is at least as low in both values.
func TestUndominatedLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "n")
		value := rapid.SliceOfN(rapid.Map(rapid.IntRange(0, 5), func(i int) float64 { return float64(i) }), n, n)
		xs, ys := value.Draw(t, "xs"), value.Draw(t, "ys")
		front := Undominated(xs, ys)
		for i := range xs {
			beaten := false
			for j := range xs {
				alike := xs[j] == xs[i] && ys[j] == ys[i]
				beaten = beaten || xs[j] <= xs[i] && ys[j] <= ys[i] && (!alike || j < i)
			}
			if slices.Contains(front, i) == beaten {
				t.Fatalf("point %d of %v, %v: beaten %v, front %v", i, xs, ys, beaten, front)
			}
		}
	})
}

func TestAppendStaircase(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	xs, ys := []float64{2.5, 5}, []float64{7.5, 5}
	got := f.AppendStaircase(nil, xs, ys, []int{0, 1}).String()
	if want := "M25 0L25 0L25 25L50 25L50 50L100 50"; got != want {
		t.Errorf("AppendStaircase = %q, want %q", got, want)
	}
	if got := f.AppendStaircase(nil, xs, ys, nil); len(got) != 0 {
		t.Errorf("AppendStaircase of nothing = %q", got)
	}
}
