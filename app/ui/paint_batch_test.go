package ui

import (
	"strings"
	"testing"

	"toewright/app/scene"
	"toewright/internal/plot"
)

func TestBatch(t *testing.T) {
	shown := nodeText{Content: "4 mm", At: plot.Point{X: 3, Y: 4.5}, Align: plot.Middle}
	moved := shown
	moved.At.Y = 5
	turned := shown
	turned.Turn = 90
	for _, tt := range []struct {
		name string
		got  batch
		want string
	}{
		{"a path", batch(nil).path(7, []byte("M0 0L1 1")), "7|d|M0 0L1 1|"},
		{"a path that is gone", batch(nil).path(7, nil), "7|d||"},
		{"a value with the end of a value", batch(nil).set(2, "", "a\x1fb"), "2||ab|"},
		{"a new text", batch(nil).text(3, nodeText{}, shown), "3||4 mm|3|x|3.00|3|y|4.50|3|text-anchor|middle|"},
		{"a text that has moved", batch(nil).text(3, shown, moved), "3|y|5.00|"},
		{"a text that is turned", batch(nil).text(3, shown, turned), "3|transform|rotate(90.00 3.00 4.50)|"},
		{"a text that is upright again", batch(nil).text(3, turned, shown), "3|transform||"},
		{"a text that is gone", batch(nil).text(3, shown, nodeText{}), "3|||3|x||3|y||3|text-anchor||"},
		{"a handle that is held", batch(nil).grip(9, grip{Shown: true}, grip{Shown: true, Held: true}), "9|class|handle held|"},
		{"after another", batch("1|x|2|").path(4, nil), "1|x|2|4|d||"},
	} {
		if got := strings.ReplaceAll(string(tt.got), stop, "|"); got != tt.want {
			t.Errorf("%s = %s, want %s", tt.name, got, tt.want)
		}
	}
}

// TestBatchOfAFrame checks that a frame has a whole number of changes, each of an element
// that is there.
func TestBatchOfAFrame(t *testing.T) {
	d := openDrawing(t)
	c := &batchCanvas{}
	d.painter = newPainter(c)
	d.request()
	d.frame(1)
	parts := strings.Split(string(c.changes), stop)
	if len(parts)%3 != 1 || len(parts) < 200 || parts[len(parts)-1] != "" {
		t.Errorf("%d parts, want a whole sheet of threes, each ended", len(parts)-1)
	}
}

// batchCanvas collects changes as the page does.
type batchCanvas struct {
	countingCanvas
	changes batch
}

func (c *batchCanvas) path(s scene.Slot, data []byte) { c.changes = c.changes.path(int(s), data) }
func (c *batchCanvas) text(s scene.Slot, was, is scene.Text) {
	c.changes = c.changes.text(int(s), nodeText(was), nodeText(is))
}
func (c *batchCanvas) grip(i int, was, is grip) {
	c.changes = c.changes.grip(scene.SlotCount()+i, was, is)
}
