package plot

import (
	"testing"

	"pgregory.net/rapid"
)

func TestDimensionAngle(t *testing.T) {
	var d Dimension
	d.Angle(Point{0, 0}, Point{7, 0}, Point{0, -3}, 50, 20, textSize)
	if got, want := d.Lines.String(), "M0 0L53.5 0M0 0L0 -53.5M50 0A50 50 0 0 0 0 -50"; got != want {
		t.Errorf("lines = %q, want %q", got, want)
	}
	if got, want := d.Heads.String(), "M50 0L51.4 -8L48.6 -8ZM0 -50L8 -48.6L8 -51.4Z"; got != want {
		t.Errorf("heads = %q, want %q", got, want)
	}
}

func TestDimensionAngleShortArc(t *testing.T) {
	var d Dimension
	d.Angle(Point{0, 0}, Point{50, 0}, Point{50, 5}, 50, 20, textSize)
	first := parse(t, d.Heads)[1].end()
	if first.Y > 0 {
		t.Errorf("the first head reaches to %v, want it outside the short arc", first)
	}
}

func TestDimensionAngleOpposite(t *testing.T) {
	var d Dimension
	d.Angle(Point{0, 0}, Point{1, 0}, Point{-1, 0}, 50, 20, textSize)
	if !near(d.Text.At.X, 0, 1e-9) || d.Text.At.Y < 50 {
		t.Errorf("text at %v, want below the half circle", d.Text)
	}
}

func TestDimensionAngleTextIsClear(t *testing.T) {
	var d Dimension
	rapid.Check(t, func(t *rapid.T) {
		d.Angle(Point{0, 0}, points(t, "a"), points(t, "b"), 50, 30, textSize)
		box := Box(d.Text.At.X-15, d.Text.At.Y-textSize*capHeight, 30, textSize*capHeight)
		if got := box.nearest(Point{}).Length(); got < 50 {
			t.Fatalf("the text comes to %v of the vertex, over the arc", got)
		}
	})
}
