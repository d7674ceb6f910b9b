package plot

import (
	"math"
	"slices"
	"sort"
	"testing"

	"pgregory.net/rapid"
)

func TestLegend(t *testing.T) {
	const size = 10
	names := []string{"base", "lower ball", "a name that is far too long for any legend at all", "short"}
	items, height := Legend(Point{5, 7}, 150, size, names)
	if len(items) != len(names) {
		t.Fatalf("%d items, want %d", len(items), len(names))
	}
	for i, item := range items {
		row := Rect{item.From, Point{item.Text.box(names[i], size).Max.X, item.From.Y + 1}}
		for j, other := range items[:i] {
			if row.Overlaps(Rect{other.From, Point{other.Text.box(names[j], size).Max.X, other.From.Y + 1}}) {
				t.Errorf("%q overlaps %q", names[i], names[j])
			}
		}
		if row.Max.X > 155 && item.From.X != 5 {
			t.Errorf("%q ends at %v and does not begin a row", names[i], row.Max.X)
		}
	}
	if want := 3 * size * rowHeight; height != want {
		t.Errorf("height = %v, want three rows, %v", height, want)
	}
	if got, want := items[0].Key(), (Point{5 + size*keyLength/2, items[0].From.Y}); got != want {
		t.Errorf("Key() = %v, want %v", got, want)
	}
}

func TestLegendOfNothing(t *testing.T) {
	if items, height := Legend(Point{}, 100, 10, nil); items != nil || height != 0 {
		t.Errorf("Legend of nothing = %v, %v", items, height)
	}
}

func TestSpread(t *testing.T) {
	tests := []struct {
		name string
		want []float64
		gap  float64
		out  []float64
	}{
		{"room enough", []float64{10, 50, 90}, 10, []float64{10, 50, 90}},
		{"pushed apart alike", []float64{50, 50}, 10, []float64{45, 55}},
		{"out of order", []float64{52, 48}, 10, []float64{55, 45}},
		{"equals keep their order", []float64{50, 50, 50}, 10, []float64{40, 50, 60}},
		{"off the end", []float64{98, 99}, 10, []float64{90, 100}},
		{"no room", []float64{1, 2, 3}, 80, []float64{0, 50, 100}},
		{"single", []float64{120}, 10, []float64{100}},
		{"nothing", nil, 10, []float64{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Spread(tt.want, tt.gap, 0, 100); !slices.Equal(got, tt.out) {
				t.Errorf("Spread(%v) = %v, want %v", tt.want, got, tt.out)
			}
		})
	}
}

func TestSpreadKeepsApartAndInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(-20, 120), 1, 9).Draw(t, "want")
		got := Spread(want, 12, 0, 100)
		sorted := slices.Clone(got)
		sort.Float64s(sorted)
		for i, v := range sorted {
			if v < -1e-9 || v > 100+1e-9 || i > 0 && v-sorted[i-1] < 12-1e-9 {
				t.Fatalf("Spread(%v) = %v", want, got)
			}
		}
	})
}

// No label may move a little, alone or with its neighbours, and come nearer to
// where it wants to stand: tried by moving every run of labels.
func TestSpreadShiftsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(10, 90), 2, 6).Draw(t, "want")
		sort.Float64s(want)
		const gap, step = 12, 0.01
		got := Spread(want, gap, 0, 100)
		cost := shift(got, want)
		for i := range got {
			for j := i + 1; j <= len(got); j++ {
				for _, by := range []float64{-step, step} {
					moved := slices.Clone(got)
					for k := i; k < j; k++ {
						moved[k] += by
					}
					if legal(moved, gap) && shift(moved, want) < cost-1e-9 {
						t.Fatalf("Spread(%v) = %v, but %v is nearer", want, got, moved)
					}
				}
			}
		}
	})
}

func shift(places, want []float64) float64 {
	sum := 0.0
	for i := range places {
		sum += math.Pow(places[i]-want[i], 2)
	}
	return sum
}

func legal(places []float64, gap float64) bool {
	for i, v := range places {
		if v < 0 || v > 100 || i > 0 && v-places[i-1] < gap {
			return false
		}
	}
	return true
}

func TestQuietCorner(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	rising := Curve{X: []float64{0, 2, 5, 8, 10}, Y: []float64{0, 2, 5, 8, 10}}
	falling := Curve{X: []float64{0, 1, 2}, Y: []float64{10, 9, 8}}
	tests := []struct {
		name   string
		curves []Curve
		want   Point
	}{
		{"empty chart", nil, Point{70, 0}},
		{"rising curve", []Curve{rising}, Point{0, 0}},
		{"both upper corners taken", []Curve{rising, falling}, Point{70, 70}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := f.QuietCorner(tt.curves, 30, 30); got.Min != tt.want {
				t.Errorf("QuietCorner = %v, want it at %v", got, tt.want)
			}
		})
	}
}
