package plot

import (
	"testing"

	"pgregory.net/rapid"
)

func TestScaleAt(t *testing.T) {
	up := Scale{Domain{-50, 50}, 200, 0}
	tests := []struct {
		name  string
		scale Scale
		v     float64
		want  float64
	}{
		{"low end", up, -50, 200},
		{"high end", up, 50, 0},
		{"middle", up, 0, 100},
		{"beyond", up, 100, -100},
		{"no span", Scale{Domain{3, 3}, 0, 10}, 8, 5},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.scale.At(tt.v); got != tt.want {
				t.Errorf("At(%v) = %v, want %v", tt.v, got, tt.want)
			}
		})
	}
	if got := (Scale{Domain{3, 4}, 7, 7}).Invert(7); got != 3 {
		t.Errorf("Invert without length = %v, want the low end 3", got)
	}
}

// scales draws scales of the sizes that charts have, of either direction.
func scales(t *rapid.T) Scale {
	low := rapid.Float64Range(-1000, 1000).Draw(t, "low")
	span := rapid.Float64Range(1e-3, 1000).Draw(t, "span")
	from := rapid.Float64Range(-2000, 2000).Draw(t, "from")
	length := rapid.Float64Range(10, 2000).Draw(t, "length")
	if rapid.Bool().Draw(t, "falling") {
		length = -length
	}
	return Scale{Domain{low, low + span}, from, from + length}
}

// scaleTolerance is the rounding of values near 1e3 that were placed near 4e3 on a
// domain as narrow as 1e-3: a few units in the last place, relative to the span.
const scaleTolerance = 1e-9

func TestScaleInvertUndoesAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := scales(t)
		v := s.Low + s.Span()*rapid.Float64Range(-1, 2).Draw(t, "t")
		if got := s.Invert(s.At(v)); !near(got, v, scaleTolerance*(1+s.Span())) {
			t.Fatalf("%v: Invert(At(%v)) = %v", s, v, got)
		}
	})
}

func TestScaleDragFollowsThePointer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := scales(t)
		from := mix(s.From, s.To, rapid.Float64Range(0, 1).Draw(t, "from"))
		to := mix(s.From, s.To, rapid.Float64Range(0, 1).Draw(t, "to"))
		v := s.Invert(from)
		dragged := s.Drag(from, to)
		// In pixels: a thousandth is less than anyone sees.
		if got := dragged.At(v); !near(got, to, 1e-3) {
			t.Fatalf("%v: what was dragged from %v to %v lies at %v", s, from, to, got)
		}
		if !near(dragged.Span(), s.Span(), scaleTolerance*(1+s.Span())) {
			t.Fatalf("%v: dragging changed the span to %v", s, dragged.Span())
		}
	})
}

func TestScaleZoomKeepsThePointer(t *testing.T) {
	s := Scale{Domain{-50, 50}, 200, 0}
	zoomed := s.ZoomAt(50, 4)
	if want := (Domain{6.25, 31.25}); zoomed.Domain != want {
		t.Errorf("ZoomAt(50, 4) has domain %v, want %v", zoomed.Domain, want)
	}
	if got := zoomed.At(25); got != 50 {
		t.Errorf("the value under the pointer moved to %v, want 50", got)
	}
}
