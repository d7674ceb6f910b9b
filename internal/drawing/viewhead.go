package drawing

import (
	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// head writes a view's name on a line, and its arrows behind it.
func (k *sheetView) head(x, y float64) {
	k.text(words, x, y, small, dxf.Left, k.name)
	k.arrows(x+width(small, k.name)+3, y)
}

// headWide is how wide the arrows are with their words.
var headWide = 2*(pointerLong+1) + 3 + width(small, "FORWARDOUTBOARD")

// arrows draws forward and outboard as they lie in the view, on a line.
func (k *sheetView) arrows(x, y float64) {
	end := k.pointer(x, y+small/2, forward, "FORWARD")
	k.pointer(end+3, y+small/2, k.outboard(), "OUTBOARD")
}

const pointerLong = 4.0

// pointer draws a direction of the car as an arrow, a dot in a ring where it points to the
// viewer, a cross in one where it points away, and returns where its word ends.
func (k *sheetView) pointer(x, y float64, d r3.Vec, word string) float64 {
	const long, ring = pointerLong, 1.2
	dx, dy := k.along(d)
	c := dxf.Point{X: x + long/2, Y: y}
	switch toward := r3.Dot(k.view.out(), d); {
	case toward > steep:
		k.add(dxf.Circle{Layer: words, Centre: c, Radius: ring}, dxf.Circle{Layer: words, Centre: c, Radius: ring / 4})
	case toward < -steep:
		h := ring * 0.7
		k.add(dxf.Circle{Layer: words, Centre: c, Radius: ring})
		k.line(words, c.X-h, c.Y-h, c.X+h, c.Y+h)
		k.line(words, c.X-h, c.Y+h, c.X+h, c.Y-h)
	default:
		a := dxf.Point{X: c.X - dx*long/2, Y: c.Y - dy*long/2}
		b := dxf.Point{X: c.X + dx*long/2, Y: c.Y + dy*long/2}
		k.add(dxf.Line{Layer: words, From: a, To: b})
		k.arrow(a, b)
	}
	k.text(words, x+long+1, y-small/2, small, dxf.Left, word)
	return x + long + 1 + width(small, word)
}
