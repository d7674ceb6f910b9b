package plot

import (
	"testing"
)

func TestTornado(t *testing.T) {
	var p Picture
	area := Box(0, 0, 400, 100)
	p.Tornado(area, []Contribution{{"one", -2, 2}, {"two", 1, -1}}, 10, 1)
	var bars []Point
	for _, m := range p.Marks {
		if m.Class == "bar" {
			bars = corners(t, m.Path)
		}
		if m.Text != "" && !area.Contains(m.Anchor.At) {
			t.Errorf("%q stands at %v, outside", m.Text, m.Anchor.At)
		}
	}
	if len(bars) != 8 {
		t.Fatalf("bars %v, want two of four corners", bars)
	}
	first, second := bars[2].X-bars[0].X, bars[6].X-bars[4].X
	if !near(first, 2*second, 4*rounding) || !(first > 0) {
		t.Errorf("bars are %v and %v wide, want one twice the other", first, second)
	}
	if left := TextWidth("one", 10); bars[0].X < left || bars[2].X > area.Max.X {
		t.Errorf("the bar from %v to %v covers its label", bars[0].X, bars[2].X)
	}
}

func TestTornadoOfNothing(t *testing.T) {
	var p Picture
	p.Tornado(Box(0, 0, 400, 100), nil, 10, 1)
	if len(p.Marks) != 1 || p.Marks[0].Class != "zero" {
		t.Errorf("marks = %v, want the zero line alone", p.Marks)
	}
}
