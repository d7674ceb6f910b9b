package plot

import (
	"testing"

	"pgregory.net/rapid"
)

// toeFrame is a frame as the page has it: toe in degrees sideways, travel in mm upward.
func toeFrame() Frame {
	return NewFrame(Box(40, 10, 200, 400), Domain{-1, 1}, Domain{-50, 50})
}

func TestFrameAt(t *testing.T) {
	tests := []struct {
		name        string
		frame       Frame
		toe, travel float64
		want        Point
	}{
		{"middle", toeFrame(), 0, 0, Point{140, 210}},
		{"bump is up, toe-in right", toeFrame(), 1, 50, Point{240, 10}},
		{"mirrored", toeFrame().Mirrored(), 1, 50, Point{40, 10}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.frame.At(tt.toe, tt.travel)
			if got != tt.want {
				t.Errorf("At(%v, %v) = %v, want %v", tt.toe, tt.travel, got, tt.want)
			}
			if toe, travel := tt.frame.Invert(got); toe != tt.toe || travel != tt.travel {
				t.Errorf("Invert(%v) = %v, %v, want %v, %v", got, toe, travel, tt.toe, tt.travel)
			}
		})
	}
}

func TestFrameGrid(t *testing.T) {
	f := toeFrame()
	ticks := []Tick{{Value: -60}, {Value: -50}, {Value: 25}, {Value: 51}}
	if got, want := f.AppendGrid(nil, Vertical, ticks).String(), "M40 410L240 410M40 110L240 110"; got != want {
		t.Errorf("grid of travel = %q, want %q", got, want)
	}
	if got, want := f.AppendGrid(nil, Horizontal, []Tick{{Value: 0.5}}).String(), "M190 10L190 410"; got != want {
		t.Errorf("grid of toe = %q, want %q", got, want)
	}
}

func TestAxisSplitUndoesPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Axis(rapid.IntRange(0, 1).Draw(t, "axis"))
		along, across := rapid.Float64().Draw(t, "along"), rapid.Float64().Draw(t, "across")
		if u, v := a.split(a.point(along, across)); u != along || v != across {
			t.Fatalf("axis %d: %v, %v came back as %v, %v", a, along, across, u, v)
		}
	})
}
