package plot

import (
	"testing"

	"pgregory.net/rapid"
)

func TestHit(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	curves := []Curve{
		{X: []float64{0, 5, 10}, Y: []float64{5, 5, 5}},
		{X: []float64{0, 10, 10}, Y: []float64{0, 20, nan}},
		{X: []float64{2, nan}, Y: []float64{7.5, nan}},
	}
	tests := []struct {
		name    string
		pointer Point
		want    Hit
		ok      bool
	}{
		{"on a line", Point{20, 48}, Hit{0, 0, 0.4, Point{20, 50}, 2}, true},
		{"second piece", Point{75, 52}, Hit{0, 1, 0.5, Point{75, 50}, 2}, true},
		{"off the end", Point{104, 50}, Hit{0, 2, 0, Point{100, 50}, 4}, true},
		{"the later of two", Point{25, 50}, Hit{1, 0, 0.25, Point{25, 50}, 0}, true},
		{"where the frame cuts", Point{50, -3}, Hit{1, 0, 0.5, Point{50, 0}, 3}, true},
		{"hidden by the frame", Point{75, -50}, Hit{}, false},
		{"single value", Point{20, 23}, Hit{2, 0, 0, Point{20, 25}, 2}, true},
		{"nothing near", Point{90, 90}, Hit{}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got, ok := f.Hit(curves, tt.pointer, 5); got != tt.want || ok != tt.ok {
				t.Errorf("Hit(%v) = %+v, %v, want %+v, %v", tt.pointer, got, ok, tt.want, tt.ok)
			}
		})
	}
}

// No place of any curve, tried in small steps, may be nearer than the hit.
func TestHitIsNearest(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(0, 10), 4, 4)
		curves := []Curve{{values.Draw(t, "x"), values.Draw(t, "y")}, {values.Draw(t, "x"), values.Draw(t, "y")}}
		pointer := points(t, "pointer")
		hit, ok := f.Hit(curves, pointer, 1000)
		if !ok {
			t.Fatalf("no hit within 1000 of %v", pointer)
		}
		for _, c := range curves {
			for i := range 300 {
				j, part := i/100, float64(i%100)/100
				p := f.At(c.X[j], c.Y[j]).Towards(f.At(c.X[j+1], c.Y[j+1]), part)
				if p.Sub(pointer).Length() < hit.Distance-1e-9 {
					t.Fatalf("%v is nearer to %v than %+v", p, pointer, hit)
				}
			}
		}
	})
}

func TestNearestPoint(t *testing.T) {
	handles := []Point{{0, 0}, {10, 0}, {10, 0}, {nan, 0}}
	tests := []struct {
		name    string
		pointer Point
		want    int
		ok      bool
	}{
		{"nearest", Point{3, 0}, 0, true},
		{"upper of two", Point{9, 0}, 2, true},
		{"too far", Point{30, 0}, 0, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got, ok := NearestPoint(handles, tt.pointer, 12); got != tt.want || ok != tt.ok {
				t.Errorf("NearestPoint(%v) = %d, %v, want %d, %v", tt.pointer, got, ok, tt.want, tt.ok)
			}
		})
	}
}
