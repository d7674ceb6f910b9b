package ui

import (
	"testing"

	"toewright/internal/plot"
)

// TestPageIsToldWhenTheHandIsStill drags a ball, rests, drags on and lets go: the page,
// which takes longer to render than a frame lasts, is told at the rest and at the end.
func TestPageIsToldWhenTheHandIsStill(t *testing.T) {
	d := openDrawing(t)
	d.desk.Select(1)
	told, asked := 0, 0
	d.edited, d.ask = func() { told++ }, func() { asked++ }
	at, scale := place(t, d, outerBall), pixelsPerMM(d, outerBall)
	d.down(at)
	for _, tt := range []struct {
		name     string
		now, way float64 // s, and mm from where the ball was taken; no way is no move
		told     int
	}{
		{"first move", 10, 3, 0},
		{"long drag", 12, 6, 0},
		{"the hand has just stopped", 12.1, 0, 0},
		{"and rests", 12 + stillTime, 0, 1},
		{"and rests on", 13, 0, 1},
		{"drags on", 13.1, 9, 1},
	} {
		if tt.way != 0 {
			d.move(at.Add(plot.Point{Y: tt.way * scale}), false)
		}
		before := asked
		d.frame(tt.now)
		if told != tt.told {
			t.Errorf("%s: the page was told %d times, want %d", tt.name, told, tt.told)
		}
		if waits := asked > before; waits != d.desk.Moving {
			t.Errorf("%s: asked for a frame: %t, want it while the page is not told: %t", tt.name, waits, d.desk.Moving)
		}
	}
	d.up()
	if told != 2 || d.desk.Moving {
		t.Errorf("told %d times after the hand let go, want 2", told)
	}
}

// TestFigureFollowsADrag checks that the key of the drawing has its figure in the frame
// of the change, and in that after the last.
func TestFigureFollowsADrag(t *testing.T) {
	d := openDrawing(t)
	d.desk.Select(1)
	c := &countingCanvas{}
	d.painter = newPainter(c)
	at, scale := place(t, d, outerBall), pixelsPerMM(d, outerBall)
	d.down(at)
	d.frame(1)
	if c.figures != 0 {
		t.Errorf("%d figures were painted before anything changed", c.figures)
	}
	d.move(at.Add(plot.Point{Y: 4 * scale}), false)
	d.frame(2)
	d.frame(2.01)
	if c.figures != 1 {
		t.Errorf("%d figures were painted for one change, want 1", c.figures)
	}
	d.move(at.Add(plot.Point{Y: 6 * scale}), false)
	d.up()
	d.frame(3)
	if c.figures != 2 {
		t.Errorf("%d figures were painted once the hand let go, want 2", c.figures)
	}
}

func TestFrameWithoutAChangePaintsNothing(t *testing.T) {
	d := openDrawing(t)
	d.desk.Moving, d.movedAt = true, 5
	d.size.Width *= 2
	c := &countingCanvas{}
	d.painter = newPainter(c)
	d.frame(5.01)
	if *c != (countingCanvas{}) {
		t.Errorf("a frame that only waits paints %+v", *c)
	}
}
