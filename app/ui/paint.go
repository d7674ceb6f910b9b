package ui

import (
	"bytes"
	"strconv"

	"toewright/app/scene"
)

// canvas sets what the nodes of the picture show.
type canvas interface {
	path(s scene.Slot, data []byte)
	text(s scene.Slot, t scene.Text)
	// grip changes handle i of the picture from what it was to what it is.
	grip(i int, was, is grip)
	// figure sets the text of a car's figure in the key of the drawing.
	figure(car int, text string)
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
}

// newPainter returns a painter of a canvas whose nodes are all empty.
func newPainter(c canvas) *painter {
	n := scene.SlotCount()
	return &painter{canvas: c, paths: make([][]byte, n), texts: make([]scene.Text, n)}
}

// paint brings a frame to the canvas.
func (p *painter) paint(out *scene.Output, grips []grip) {
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
}

func (p *painter) paintPath(s scene.Slot, data []byte) {
	if !bytes.Equal(p.paths[s], data) {
		p.paths[s] = append(p.paths[s][:0], data...)
		p.canvas.path(s, data)
	}
}

func (p *painter) paintText(s scene.Slot, t scene.Text) {
	if p.texts[s] != t {
		p.texts[s] = t
		p.canvas.text(s, t)
	}
}

// class returns the classes of a handle's element.
func (g grip) class() string {
	c := "handle"
	if g.Round {
		c += " ball-handle"
	}
	if g.Held {
		c += " held"
	}
	return c
}

// nodeAttribute is one of an element's; an empty value is none.
type nodeAttribute struct{ name, value string }

// attributes returns those of a handle's element, always the same ones in the same
// order.
func (g grip) attributes() [10]nodeAttribute {
	list := [...]nodeAttribute{
		{"display", "none"}, {"class", g.class()}, {"transform", ""}, {"tabindex", ""}, {"aria-hidden", "true"},
		{"aria-label", g.Label}, {"aria-valuenow", coordinate(g.Value)}, {"aria-valuemin", coordinate(g.Low)},
		{"aria-valuemax", coordinate(g.High)}, {"aria-valuetext", g.Spoken},
	}
	if g.Shown {
		list[0].value = ""
		list[2].value = "translate(" + coordinate(g.X) + " " + coordinate(g.Y) + ")"
	}
	if g.Shown && g.Focus {
		list[3].value, list[4].value = "0", ""
	}
	return list
}

// coordinate writes a number as SVG reads it, to a hundredth of a unit of the paper.
func coordinate(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
