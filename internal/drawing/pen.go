package drawing

import (
	"math"

	"toewright/internal/drawing/dxf"
)

// The layers.
const (
	outline   = "OUTLINE"
	centre    = "CENTRE"
	original  = "ORIGINAL"
	dimension = "DIMENSION"
	words     = "TEXT"
)

// layers are those of every drawing; line types are by ISO 128-2's habits: full for edges,
// chain for axes, dashed for what was.
var layers = []dxf.Layer{
	{Name: outline, Colour: 7, Lines: dxf.Continuous},
	{Name: centre, Colour: 1, Lines: dxf.Chain},
	{Name: original, Colour: 3, Lines: dxf.Dashed},
	{Name: dimension, Colour: 5, Lines: dxf.Continuous},
	{Name: words, Colour: 7, Lines: dxf.Continuous},
}

// Sizes on the paper, mm: letters of ISO 3098 in dimensions, and smaller ones in tables.
const (
	letter = 2.5
	small  = 1.8
	label  = 1.5

	boxHigh   = 2 * letter // of a frame about letters
	arrowLong = 2.5
	arrowHalf = 0.4
	beyondEnd = 1.5 // of an extension line past the dimension line
)

// pen collects what is drawn on the paper.
type pen struct{ drawn []dxf.Entity }

func (k *pen) add(e ...dxf.Entity) { k.drawn = append(k.drawn, e...) }

func (k *pen) line(layer string, x1, y1, x2, y2 float64) {
	k.add(dxf.Line{Layer: layer, From: dxf.Point{X: x1, Y: y1}, To: dxf.Point{X: x2, Y: y2}})
}

func (k *pen) rect(layer string, x, y, w, h float64) {
	k.add(dxf.Polyline{Layer: layer, Closed: true, Points: []dxf.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}})
}

func (k *pen) text(layer string, x, y, high float64, align dxf.Align, value string) {
	if value != "" {
		k.add(dxf.Text{Layer: layer, At: dxf.Point{X: x, Y: y}, Height: high, Align: align, Value: value})
	}
}

// width returns how wide a text is.
func width(high float64, value string) float64 { return dxf.Text{Height: high, Value: value}.Width() }

// upright writes a text that is read from the right, its base line at x.
func (k *pen) upright(layer string, x, y, high float64, align dxf.Align, value string) {
	k.add(dxf.Text{Layer: layer, At: dxf.Point{X: x, Y: y}, Height: high, Align: align, Turn: 90, Value: value})
}

// boxWide returns the width of a frame about a text.
func boxWide(value string) float64 { return width(letter, value) + letter }

// box writes a text in a frame with its lower left corner at a place, and returns its right
// edge.
func (k *pen) box(x, y float64, value string) (right float64) {
	w := boxWide(value)
	k.rect(dimension, x, y, w, boxHigh)
	k.text(dimension, x+w/2, y+letter/2, letter, dxf.Middle, value)
	return x + w
}

// arrow draws the head of an arrow that points from one place to another.
func (k *pen) arrow(from, to dxf.Point) {
	dx, dy := to.X-from.X, to.Y-from.Y
	n := math.Hypot(dx, dy)
	if n == 0 {
		return
	}
	dx, dy = dx/n, dy/n
	back := dxf.Point{X: to.X - dx*arrowLong, Y: to.Y - dy*arrowLong}
	k.add(dxf.Polyline{Layer: dimension, Closed: true, Filled: true, Points: []dxf.Point{
		to, {X: back.X - dy*arrowHalf, Y: back.Y + dx*arrowHalf}, {X: back.X + dy*arrowHalf, Y: back.Y - dx*arrowHalf},
	}})
}

// leader draws a line to what a note is about, with an arrow at its end, from the end of a
// short level line.
func (k *pen) leader(x, y, toX, toY float64) {
	to := dxf.Point{X: toX, Y: toY}
	k.line(dimension, x, y, toX, toY)
	k.arrow(dxf.Point{X: x, Y: y}, to)
}

// datum draws a datum's triangle on an edge of the paper, its letter in a frame away from it
// by ISO 5459: dx, dy is the direction away, of length 1.
func (k *pen) datum(x, y, dx, dy float64, name string) {
	const half, high, stem = 1.5, 2.4, 3.0
	tip := dxf.Point{X: x + dx*high, Y: y + dy*high}
	k.add(dxf.Polyline{Layer: dimension, Closed: true, Filled: true, Points: []dxf.Point{
		{X: x - dy*half, Y: y + dx*half}, {X: x + dy*half, Y: y - dx*half}, tip,
	}})
	end := dxf.Point{X: tip.X + dx*stem, Y: tip.Y + dy*stem}
	k.add(dxf.Line{Layer: dimension, From: tip, To: end})
	w := boxWide(name)
	k.box(end.X-w/2+dx*w/2, end.Y-boxHigh/2+dy*boxHigh/2, name)
}

// extent returns the corners of what is drawn.
func (k *pen) extent() (lo, hi dxf.Point) { return dxf.Extent(k.drawn) }

// shifted returns entities moved over the paper.
func shifted(list []dxf.Entity, dx, dy float64) []dxf.Entity {
	by := func(p dxf.Point) dxf.Point { return dxf.Point{X: p.X + dx, Y: p.Y + dy} }
	out := make([]dxf.Entity, len(list))
	for i, e := range list {
		switch e := e.(type) {
		case dxf.Line:
			e.From, e.To = by(e.From), by(e.To)
			out[i] = e
		case dxf.Circle:
			e.Centre = by(e.Centre)
			out[i] = e
		case dxf.Mark:
			e.At = by(e.At)
			out[i] = e
		case dxf.Text:
			e.At = by(e.At)
			out[i] = e
		case dxf.Polyline:
			points := make([]dxf.Point, len(e.Points))
			for j, p := range e.Points {
				points[j] = by(p)
			}
			e.Points = points
			out[i] = e
		}
	}
	return out
}
