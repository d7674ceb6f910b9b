package plot

import "testing"

func TestTextWidth(t *testing.T) {
	tests := []struct {
		text string
		want float64
	}{
		{"", 0},
		{"0.25", 3*0.56 + 0.28},
		{"Wil", 0.88 + 2*0.28},
		{"A−", 0.68 + 0.56},
		{"車", 1},
	}
	for _, tt := range tests {
		if got := TextWidth(tt.text, 10); !near(got, 10*tt.want, 1e-9) {
			t.Errorf("TextWidth(%q, 10) = %v, want %v", tt.text, got, 10*tt.want)
		}
	}
}

func TestAlignString(t *testing.T) {
	for align, want := range map[Align]string{Start: "start", Middle: "middle", End: "end", 9: "end"} {
		if got := align.String(); got != want {
			t.Errorf("Align(%d) = %q, want %q", align, got, want)
		}
	}
}

func TestAnchorBox(t *testing.T) {
	width := TextWidth("toe", 10)
	for align, left := range map[Align]float64{Start: 50, Middle: 50 - width/2, End: 50 - width} {
		got := Anchor{At: Point{50, 20}, Align: align}.box("toe", 10)
		if got.Min != (Point{left, 12}) || !near(got.Width(), width, 1e-9) {
			t.Errorf("%v: box = %v, want it from %v, %v wide", align, got, left, width)
		}
	}
}

// box returns the upright rectangle that the unturned text covers.
func (a Anchor) box(text string, size float64) Rect {
	width := TextWidth(text, size)
	left := a.At.X - width*float64(min(a.Align, End))/2
	return Box(left, a.At.Y-0.8*size, width, size)
}
