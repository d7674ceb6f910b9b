package plot

import (
	"math"
	"testing"
)

// raster returns which cells of a 32×32 grid over -2..2 a marker of size 1 covers.
func raster(m Marker) (cells [32 * 32]bool) {
	for i := range cells {
		p := Point{(float64(i%32)+0.5)/8 - 2, (float64(i/32)+0.5)/8 - 2}
		if m == Disc {
			cells[i] = p.Length() <= 1
		} else {
			cells[i] = inside(outlines[m], p)
		}
	}
	return cells
}

// inside reports by the even-odd rule whether p is in a polygon.
func inside(polygon []Point, p Point) bool {
	in := false
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func TestMarkersAreToldApart(t *testing.T) {
	const least = 0.15 // of the cells that either covers: a square and a disc of one area
	for a := range Marker(MaxSeries) {
		for b := range a {
			either, both := 0, 0
			cellsA, cellsB := raster(a), raster(b)
			for i := range cellsA {
				if cellsA[i] || cellsB[i] {
					either++
				}
				if cellsA[i] && cellsB[i] {
					both++
				}
			}
			if differ := 1 - float64(both)/float64(either); differ < least {
				t.Errorf("markers %d and %d differ in %.2f of what they cover, want %v", a, b, differ, least)
			}
		}
	}
}

func TestMarkersAreOfOneSize(t *testing.T) {
	for m := Square; m < MaxSeries; m++ {
		if got := area(outlines[m]); got < 0.8*math.Pi || got > 1.2*math.Pi {
			t.Errorf("marker %d has the area %.2f, want that of the disc, %.2f, within a fifth", m, got, math.Pi)
		}
	}
}

func TestPathMarker(t *testing.T) {
	tests := []struct {
		name   string
		marker Marker
		want   string
	}{
		{"disc", Disc, "M8 20A2 2 0 0 1 12 20A2 2 0 0 1 8 20Z"},
		{"polygon", Diamond, "M10 17.2L12.2 20L10 22.8L7.8 20Z"},
		{"unknown", 200, "M8 20A2 2 0 0 1 12 20A2 2 0 0 1 8 20Z"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Path(nil).Marker(tt.marker, Point{10, 20}, 2).String(); got != tt.want {
				t.Errorf("Marker(%d) = %q, want %q", tt.marker, got, tt.want)
			}
		})
	}
}

func TestAppendMarkers(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	xs, ys := []float64{0, 1, nan, 3, 4, 11}, []float64{5, 5, 5, 5, 5, 5}
	for every, want := range map[int]int{0: 4, 1: 4, 2: 2, 3: 2, 100: 1} {
		if got := count(f.AppendMarkers(nil, Square, 3, xs, ys, every), 'Z'); got != want {
			t.Errorf("every %d: %d markers, want %d", every, got, want)
		}
	}
}
