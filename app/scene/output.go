package scene

import "toewright/internal/plot"

// Output is what a frame puts into the nodes. Its buffers are used again from frame
// to frame.
type Output struct {
	paths [][]byte
	texts []Text
	class string
}

// Text is a text at a place.
type Text struct {
	Content string
	At      plot.Point
	Turn    float64 // degrees clockwise about At
	Align   plot.Align
}

// NewOutput returns an empty output.
func NewOutput() *Output {
	return &Output{paths: make([][]byte, SlotCount()), texts: make([]Text, SlotCount())}
}

// Class returns the classes of the picture itself: they say which curve is that of the
// selected car and which that of the reference.
func (o *Output) Class() string { return o.class }

// Path returns the path data of a slot.
func (o *Output) Path(s Slot) []byte { return o.paths[s] }

// Text returns the text of a slot.
func (o *Output) Text(s Slot) Text { return o.texts[s] }

// clear empties every slot but those of curves, which are drawn anew only where they
// change.
func (o *Output) clear() {
	o.class = classOf(0, 0)
	for i := range o.paths {
		if !nodes.list[i].kept {
			o.empty(Slot(i))
		}
	}
}

// empty empties a slot.
func (o *Output) empty(s Slot) { o.paths[s], o.texts[s] = o.paths[s][:0], Text{} }

// draw lets a function append to the path of a slot.
func (o *Output) draw(s Slot, add func(plot.Path) plot.Path) {
	o.paths[s] = add(plot.Path(o.paths[s]))
}

// append adds a path to that of a slot.
func (o *Output) append(s Slot, p plot.Path) { o.paths[s] = append(o.paths[s], p...) }

// write puts a text into a slot, aligned as the slot is.
func (o *Output) write(s Slot, at plot.Point, content string) {
	o.texts[s] = Text{Content: content, At: at, Align: nodes.list[s].align}
}

// anchor puts a text into a slot with an anchor of its own.
func (o *Output) anchor(s Slot, a plot.Anchor, content string) {
	o.texts[s] = Text{Content: content, At: a.At, Turn: a.Turn, Align: a.Align}
}
