package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const textSize = 10

func TestDimensionHorizontal(t *testing.T) {
	var d Dimension
	d.Horizontal(Point{100, 20}, Point{0, 0}, 50, 30, textSize)
	// From the left point down; extension lines 2.5 clear of the part and 3.5 beyond.
	if got, want := d.Lines.String(), "M0 2.5L0 53.5M100 22.5L100 53.5M0 50L100 50"; got != want {
		t.Errorf("lines = %q, want %q", got, want)
	}
	if got, want := d.Heads.String(), "M0 50L8 51.4L8 48.6ZM100 50L92 48.6L92 51.4Z"; got != want {
		t.Errorf("heads = %q, want %q", got, want)
	}
	if want := (Anchor{Point{50, 47.5}, Middle, 0}); d.Text != want {
		t.Errorf("text at %v, want %v", d.Text, want)
	}
}

func TestDimensionVerticalReadsFromBelow(t *testing.T) {
	var d Dimension
	d.Vertical(Point{0, 100}, Point{20, 0}, -30, 30, textSize)
	if got, want := d.Lines.String(), "M17.5 0L-33.5 0M-2.5 100L-33.5 100M-30 0L-30 100"; got != want {
		t.Errorf("lines = %q, want %q", got, want)
	}
	if d.Text.Turn != -90 || !nearPoint(d.Text.At, Point{-32.5, 50}, 1e-9) {
		t.Errorf("text at %v, want left of the line and turned by -90", d.Text)
	}
}

func TestDimensionWithoutRoom(t *testing.T) {
	tests := []struct {
		name  string
		draw  func(*Dimension)
		align Align
		clear func(Point) bool
	}{
		{"horizontal", func(d *Dimension) { d.Horizontal(Point{0, 0}, Point{20, 0}, 30, 30, textSize) }, Start,
			func(p Point) bool { return p.X > 20+textSize*headLength }},
		{"vertical", func(d *Dimension) { d.Vertical(Point{0, 0}, Point{0, 20}, 30, 30, textSize) }, End,
			func(p Point) bool { return p.Y > 20+textSize*headLength }},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var d Dimension
			tt.draw(&d)
			if d.Text.Align != tt.align || !tt.clear(d.Text.At) {
				t.Errorf("text at %v, want beyond the arrow from outside", d.Text)
			}
		})
	}
}

// The dimension line is as long as the distance that the dimension states, along
// its direction, and lies where it was asked to.
func TestDimensionStraightLaw(t *testing.T) {
	var d Dimension
	rapid.Check(t, func(t *rapid.T) {
		a, b := points(t, "a"), points(t, "b")
		sin, cos := math.Sincos(rapid.Float64Range(-4, 4).Draw(t, "angle"))
		along := Point{cos, sin}
		d.Straight(a, b, along, 40, 10, textSize)
		heads := parse(t, d.Heads)
		from, to := heads[0].end(), heads[4].end()
		want := math.Abs(b.Sub(a).Dot(along))
		if got := to.Sub(from).Length(); !near(got, want, 4*rounding) {
			t.Fatalf("from tip to tip %v, want %v", got, want)
		}
		if got := from.Sub(a).Dot(along.Across()); !near(got, 40, 4*rounding) {
			t.Fatalf("the line lies %v off, want 40", got)
		}
		if turn := d.Text.Turn; turn < -90 || turn >= 90 {
			t.Fatalf("text turned by %v stands on its head", turn)
		}
	})
}
