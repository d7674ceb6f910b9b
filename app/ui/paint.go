package ui

import (
	"bytes"

	"toewright/app/scene"
)

// canvas sets what the nodes of the picture show.
type canvas interface {
	path(s scene.Slot, data []byte)
	// text changes a text from what it was to what it is.
	text(s scene.Slot, was, is scene.Text)
	// grip changes handle i of the picture from what it was to what it is.
	grip(i int, was, is grip)
	// class sets the classes of the picture itself.
	class(classes string)
	// figure sets the text of a car's figure in the key of the drawing.
	figure(car int, text string)
	// done shows what was set since it was called last.
	done()
}

// grip is how a handle stands in the picture; the zero grip is not there.
type grip struct {
	X, Y   float64
	Shown  bool
	Round  bool // a ball, rather than a wheel or a marker
	Focus  bool
	Held   bool
	Label  string
	Value  float64 // in the unit shown
	Low    float64
	High   float64
	Spoken string // the value as people hear it
}

// painter brings frames to a canvas and touches only what has changed since the
// frame before.
type painter struct {
	canvas canvas
	paths  [][]byte
	texts  []scene.Text
	grips  [scene.MaxHandles]grip
	class  string
}

// newPainter returns a painter of a canvas whose nodes are all empty.
func newPainter(c canvas) *painter {
	n := scene.SlotCount()
	return &painter{canvas: c, paths: make([][]byte, n), texts: make([]scene.Text, n)}
}

// paint brings a frame to the canvas.
func (p *painter) paint(out *scene.Output, grips []grip) {
	if c := out.Class(); c != p.class {
		p.class = c
		p.canvas.class(c)
	}
	for i := range p.paths {
		if s := scene.Slot(i); s.IsText() {
			p.paintText(s, out.Text(s))
		} else {
			p.paintPath(s, out.Path(s))
		}
	}
	for i := range p.grips {
		var g grip
		if i < len(grips) {
			g = grips[i]
		}
		if was := p.grips[i]; was != g {
			p.grips[i] = g
			p.canvas.grip(i, was, g)
		}
	}
	p.canvas.done()
}

func (p *painter) paintPath(s scene.Slot, data []byte) {
	if !bytes.Equal(p.paths[s], data) {
		p.paths[s] = append(p.paths[s][:0], data...)
		p.canvas.path(s, data)
	}
}

func (p *painter) paintText(s scene.Slot, t scene.Text) {
	if was := p.texts[s]; was != t {
		p.texts[s] = t
		p.canvas.text(s, was, t)
	}
}
