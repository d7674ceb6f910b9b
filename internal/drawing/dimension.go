package drawing

import (
	"toewright/internal/drawing/dxf"
)

// levelLine draws a dimension line at a height, with its frame above it.
func (k *sheetView) levelLine(a, b dxf.Point, y float64, text, change string) {
	k.line(dimension, a.X, a.Y-1, a.X, y-beyondEnd)
	k.line(dimension, b.X, b.Y-1, b.X, y-beyondEnd)
	if b.X < a.X {
		a, b = b, a
	}
	k.heads(dxf.Point{X: a.X, Y: y}, dxf.Point{X: b.X, Y: y})
	whole := boxWide(text)
	if change != "" {
		whole += 1 + width(letter, change)
	}
	// Neither line at the ends runs through the words.
	x := min((a.X+b.X)/2-boxWide(text)/2, b.X-whole)
	if x < a.X {
		x = b.X + arrowLong + 2
		k.line(dimension, b.X, y, x, y)
		y -= boxHigh / 2
	}
	right := k.box(x, y, text)
	k.text(dimension, right+1, y+letter/2, letter, dxf.Left, change)
}

// plumbLine draws an upright one, with its frame beside it, turned to be read from the right.
func (k *sheetView) plumbLine(a, b dxf.Point, x, side float64, text, change string) {
	k.line(dimension, a.X+side, a.Y, x+side*beyondEnd, a.Y)
	k.line(dimension, b.X+side, b.Y, x+side*beyondEnd, b.Y)
	from := a
	if b.Y < a.Y {
		a, b = b, a
	}
	k.heads(dxf.Point{X: x, Y: a.Y}, dxf.Point{X: x, Y: b.Y})
	w, mid := boxWide(text), (a.Y+b.Y)/2
	switch n := b.Y - a.Y; {
	case n < 2.5*arrowLong: // under the arrow that stands outside
		mid = a.Y - 2*arrowLong - w/2
	case n < w && from == a: // away from where the next size begins
		mid = a.Y + w/2
	case n < w:
		mid = b.Y - w/2
	}
	left := x - boxHigh
	if side > 0 {
		left = x
	}
	k.rect(dimension, left, mid-w/2, boxHigh, w)
	k.upright(dimension, left+boxHigh-letter/2, mid, letter, dxf.Middle, text)
	if change != "" {
		at := left + boxHigh + letter + 1
		if side < 0 {
			at = left - 1
		}
		k.upright(dimension, at, mid, letter, dxf.Middle, change)
	}
}

// heads draws a dimension line with its arrows, outside where there is no room within.
func (k *sheetView) heads(a, b dxf.Point) {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := abs(dx) + abs(dy)
	if n >= 2.5*arrowLong {
		k.line(dimension, a.X, a.Y, b.X, b.Y)
		k.arrow(b, a)
		k.arrow(a, b)
		return
	}
	ux, uy := 0.0, 1.0
	if abs(dx) > abs(dy) {
		ux, uy = 1, 0
	}
	out := 2 * arrowLong
	before, after := dxf.Point{X: a.X - ux*out, Y: a.Y - uy*out}, dxf.Point{X: b.X + ux*out, Y: b.Y + uy*out}
	k.line(dimension, before.X, before.Y, after.X, after.Y)
	k.arrow(before, a)
	k.arrow(after, b)
}
