package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestAppendBand(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	tests := []struct {
		name          string
		along         Axis
		at, low, high []float64
		want          string
	}{
		{"level", Horizontal, []float64{0, 10}, []float64{2, 2}, []float64{4, 4}, "M0 80L100 80L100 60L0 60Z"},
		{"upright", Vertical, []float64{0, 10}, []float64{2, 2}, []float64{4, 4}, "M20 100L20 0L40 0L40 100Z"},
		{"cut above", Horizontal, []float64{0, 10}, []float64{5, 5}, []float64{5, 15}, "M0 50L100 50L100 0L50 0L0 50Z"},
		{"cut at the sides", Horizontal, []float64{-10, 20}, []float64{2, 2}, []float64{4, 4}, "M0 80L100 80L100 60L0 60Z"},
		{"gap", Horizontal, []float64{0, 1, 2, 3, 4}, []float64{0, 0, nan, 0, 0}, []float64{1, 1, 1, 1, 1},
			"M0 100L10 100L10 90L0 90ZM30 100L40 100L40 90L30 90Z"},
		{"single value", Horizontal, []float64{1}, []float64{0}, []float64{1}, ""},
		{"nothing", Horizontal, nil, nil, nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := f.AppendBand(nil, tt.along, tt.at, tt.low, tt.high).String(); got != tt.want {
				t.Errorf("AppendBand = %q, want %q", got, tt.want)
			}
		})
	}
}

// The area of the path must be that of the band within the frame, summed in thin
// slices.
func TestAppendBandArea(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	rapid.Check(t, func(t *rapid.T) {
		at := []float64{-4, 3, 7, 15}
		low := rapid.SliceOfN(rapid.Float64Range(-15, 25), 4, 4).Draw(t, "low")
		high := make([]float64, 4)
		for i := range high {
			high[i] = low[i] + rapid.Float64Range(0, 20).Draw(t, "width")
		}
		got := area(corners(t, f.AppendBand(nil, Horizontal, at, low, high)))
		const slices, tolerance = 2000, 5 // of 10,000 px²: slices of 5 px² and the rounded corners
		want := 0.0
		for i := range slices {
			x := 10 * (float64(i) + 0.5) / slices
			l, _ := Interpolate(at, low, x)
			h, _ := Interpolate(at, high, x)
			want += (clamp(h, 0, 10) - clamp(l, 0, 10)) * 10 * 100 / slices
		}
		if !near(got, want, tolerance) {
			t.Fatalf("the band has an area of %.1f px², want %.1f", got, want)
		}
	})
}

// area returns the area within a closed polygon, whichever way it runs.
func area(polygon []Point) float64 {
	sum := 0.0
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}
