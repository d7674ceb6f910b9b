package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
	"toewright/internal/number"
)

// Rooms about the views of an arm, on the paper, mm.
const (
	viewGap  = 4.0
	headHigh = 4.5  // of a view's name and arrows
	dimGap   = 3.0  // of a dimension line from the view
	dimStep  = 10.0 // to the next

	datumLong = 11.0 // of a datum's triangle with its letter
)

// block draws an arm in three views at a scale, by its projection. Its lower left corner is at
// the origin.
func (p *part) block(scale float64, hand string) (list []dxf.Entity, wide, high float64) {
	b := p.newLayout(scale)
	if p.firstAngle {
		b.inFirstAngle(hand)
	} else {
		b.inThirdAngle(hand)
	}
	from, to := b.extent()
	return shifted(b.drawn, -from.X, -from.Y), to.X - from.X, to.Y - from.Y
}

// sizeAlong returns the size along a direction of the paper.
func (p *part) sizeAlong(d r3.Vec) *size {
	for i := range p.sizes {
		if abs(r3.Dot(p.sizes[i].along, d)) > steep {
			return &p.sizes[i]
		}
	}
	return &p.sizes[0]
}

// datumPoint is where a size's extension line begins.
func (p *part) datumPoint(z *size) r3.Vec {
	switch {
	case p.face == nil:
		return p.was
	case z.Of == "face":
		return p.face.point
	}
	return p.face.lowest
}

// mainSizes draws, in the view that shows the arm's length and height, the size from the face
// with the datum, or from the original ball.
func (p *part) mainSizes(k *sheetView, lo, hi dxf.Point, side float64) {
	k.head(lo.X, hi.Y+headHigh-letter)
	z := p.sizeAlong(k.view.right)
	y := lo.Y - dimGap - boxHigh
	if k.angle(k.along(k.stud)) != "" {
		y -= leanDrop
	}
	k.level(z, k.place(p.datumPoint(z)), k.place(p.hole), y)
	if p.face == nil {
		k.unstated(side)
		return
	}
	if d := p.face.normal; abs(r3.Dot(d, k.view.right)) > steep {
		c := k.place(p.face.point)
		k.datum(c.X, c.Y, -side, 0, "A")
	}
	k.lean(side)
}

// planSizes draws the size across, in the view from above, and what is asked of the hole.
func (p *part) planSizes(k *sheetView, lo, hi dxf.Point, side float64) {
	k.head(lo.X, k.at.Y+hi.Y+headHigh-letter)
	z := p.sizeAlong(k.view.up)
	x := lo.X - dimGap
	if side < 0 {
		x = hi.X + dimGap
	}
	k.plumb(z, k.place(p.datumPoint(z)), k.place(p.hole), x, -side)
	if c := k.place(p.was); p.face == nil {
		k.datum(c.X, c.Y-k.scale*p.wasRadius(), 0, -1, "A")
	}
}

// endSizes draws the height of the ball and the bolts, in the view from the end of the arm,
// whose name stands below them.
func (p *part) endSizes(k *sheetView, lo, hi dxf.Point, side float64) {
	all := k.pen
	k.pen = &pen{}
	x, left := k.at.X+hi.X+dimGap, k.at.X+lo.X
	if side < 0 {
		x, left = k.at.X+lo.X-dimGap, k.at.X+hi.X-headWide
	}
	z := p.sizeAlong(k.view.up)
	k.plumb(z, k.place(p.datumPoint(z)), k.place(p.hole), x, side)
	if p.face != nil {
		low, _ := k.extent()
		k.spacings(x, min(lo.Y, low.Y)-dimGap, side, z.exact)
	}
	k.lean(side)
	low, _ := k.extent()
	y := min(lo.Y, low.Y) - small - 1
	k.text(words, left, y, small, dxf.Left, k.name)
	k.arrows(left, y-headHigh)
	all.add(k.drawn...)
	k.pen = all
}

// spacings draws how far the bolts stand from the lowest one: up in the same line as the
// ball's size where that goes down, else beyond it; across below the view.
func (k *sheetView) spacings(x, y, side, ball float64) {
	if ball > 0 {
		x += side * dimStep
	}
	low := k.place(k.face.lowest)
	for _, b := range k.face.bolts {
		c := k.place(b)
		up, across := (c.Y-low.Y)/k.scale, (c.X-low.X)/k.scale
		if k.length(up) != k.length(0) {
			k.plumbLine(low, c, x, side, k.length(abs(up)), "")
			x += side * dimStep
		}
		if k.length(across) != k.length(0) {
			k.levelLine(low, c, y-boxHigh, k.length(abs(across)), "")
			y -= dimStep
		}
	}
}

// level draws a basic size to the right or left at a height on the paper.
func (k *sheetView) level(z *size, a, b dxf.Point, y float64) {
	if text, change := k.sized(z); text != "" {
		k.levelLine(a, b, y, text, change)
	}
}

// plumb draws one up or down at a place across the paper, beyond the view on a side.
func (k *sheetView) plumb(z *size, a, b dxf.Point, x, side float64) {
	if text, change := k.sized(z); text != "" {
		k.plumbLine(a, b, x, side, text, change)
	}
}

// sized writes a basic size as it is to be made, and its change from the original in
// brackets; "" for one that is written as zero now and before.
func (k *sheetView) sized(z *size) (text, change string) {
	text = k.madeText(abs(z.made))
	by := (z.exact - z.was)
	if z.exact < 0 {
		by = -by
	}
	change = k.length(by)
	if change == k.length(0) || k.face == nil { // from the original itself there is but one
		if k.length(z.made) == k.length(0) {
			return "", ""
		}
		return text, ""
	}
	return text, "(" + number.Plain(number.Signed(by, change)) + ")"
}

// madeText writes a size to be made: with its fraction where the shop's step is one, so that
// the fraction is exact.
func (p *part) madeText(mm float64) string {
	if parts := 64 * p.study.Units.Millimetres(p.step) / 25.4; p.style.Fractions() && abs(parts-math.Round(parts)) < 1e-9 {
		return p.style.LengthNumber(mm)
	}
	return p.length(mm)
}

// leanDrop is how far the frame of the angle hangs under the stud's axis, on the paper, mm: clear
// of the eye.
const leanDrop = 3.0

// lean draws the angle of the hole's axis to the upright of the view, under the eye, where
// there is one.
func (k *sheetView) lean(side float64) {
	text := k.angle(k.along(k.stud))
	if text == "" {
		return
	}
	b, end := k.place(k.hole), k.place(r3.Sub(k.eyeFar(), r3.Scale(padEdge, k.stud)))
	end.Y -= leanDrop
	k.line(dimension, b.X, b.Y, b.X, end.Y)
	w := boxWide(text)
	at := max(b.X, end.X) + 1
	if side > 0 {
		at = min(b.X, end.X) - 1 - w
	}
	k.box(at, end.Y, text)
}

// angle writes that between a direction of the paper and upright, "" where there is none.
func (p *part) angle(x, y float64) string {
	text := number.Decimal(degreesOf(x, y), 2)
	if text == number.Decimal(0, 2) || text == number.Decimal(90, 2) {
		return ""
	}
	return text + "°"
}

// unstated marks the steering axis of an arm whose face and bolts are not stated.
func (k *sheetView) unstated(side float64) {
	low := k.place(r3.Add(k.foot, r3.Scale(-axisShown*0.8, k.axis)))
	k.leader(low.X+side*8, low.Y-2, low.X, low.Y)
	k.box(low.X+side*8-boxWide("B")/2, low.Y-2-boxHigh, "B")
	top := k.place(r3.Add(k.foot, r3.Scale(axisShown, k.axis)))
	if text := k.angle(k.along(k.axis)); text != "" {
		k.box(top.X+1, top.Y-boxHigh, text)
	}
}

// wasRadius is that of the original hole as it is drawn.
func (p *part) wasRadius() float64 {
	if p.large > 0 {
		return p.large / 2
	}
	return usualHole / 2
}
