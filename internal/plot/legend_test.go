package plot

import (
	"testing"
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
