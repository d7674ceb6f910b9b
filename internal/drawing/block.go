package drawing

import (
	"math"
	"strconv"

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

// block draws an arm in three views at a scale, third angle: what is seen from above stands
// above, what is seen from the end at that end. Its lower left corner is at the origin.
func (p *part) block(scale float64, hand string) (list []dxf.Entity, wide, high float64) {
	views := p.views(scale)
	k := &pen{}
	at := func(i int) *sheetView { return &sheetView{k, p, views[i]} }
	// Where each view ends when its origin lies at that of the paper.
	var lo, hi [3]dxf.Point
	for i := range views {
		probe := &sheetView{&pen{}, p, views[i]}
		probe.draw()
		lo[i], hi[i] = probe.extent()
	}
	right := 0.0
	atRight := r3.Dot(views[endView].out(), views[mainView].right) > 0
	views[planView].at.Y = hi[mainView].Y + headHigh + viewGap - lo[planView].Y
	if p.face == nil {
		views[planView].at.Y += datumLong
	}
	if room := hi[endView].Y + p.askedHigh(); views[planView].at.Y+hi[planView].Y+headHigh < room {
		views[planView].at.Y = room - headHigh - hi[planView].Y
	}
	for _, i := range []int{mainView, planView} { // their names may be wider
		right = max(right, hi[i].X, lo[mainView].X+width(small, views[i].name)+headWide+3)
	}
	if p.angle(views[endView].along(p.stud)) != "" { // it stands between them
		right, hi[endView].X = right+2*viewGap, hi[endView].X+2*viewGap
	}
	if atRight {
		views[endView].at.X = right + viewGap - lo[endView].X
	} else {
		views[endView].at.X = lo[mainView].X - viewGap - hi[endView].X
	}
	for i := range views {
		at(i).draw()
	}
	side := 1.0 // of the end where the ball is
	if !atRight {
		side = -1
	}
	p.mainSizes(at(mainView), lo[mainView], hi[mainView], side)
	p.planSizes(at(planView), lo[planView], hi[planView], side)
	p.endSizes(at(endView), lo[endView], hi[endView], side)
	p.asked(at(planView), at(endView), right, lo[mainView].X, side, views[planView].at.Y+hi[planView].Y+headHigh, hand)
	from, to := k.extent()
	return shifted(k.drawn, -from.X, -from.Y), to.X - from.X, to.Y - from.Y
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

// levelLine draws a dimension line at a height, with its frame above it.
func (k *sheetView) levelLine(a, b dxf.Point, y float64, text, change string) {
	k.line(dimension, a.X, a.Y-1, a.X, y-beyondEnd)
	k.line(dimension, b.X, b.Y-1, b.X, y-beyondEnd)
	if b.X < a.X {
		a, b = b, a
	}
	k.heads(dxf.Point{X: a.X, Y: y}, dxf.Point{X: b.X, Y: y})
	x := (a.X+b.X)/2 - boxWide(text)/2
	if b.X-a.X < boxWide(text) {
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

// lean draws the angle of the hole's axis to the upright of the view, under the eye, where
// there is one.
func (k *sheetView) lean(side float64) {
	text := k.angle(k.along(k.stud))
	if text == "" {
		return
	}
	b, end := k.place(k.hole), k.place(r3.Sub(k.eyeFar(), r3.Scale(padEdge, k.stud)))
	k.line(dimension, b.X, b.Y, b.X, end.Y)
	w := boxWide(text)
	at := end.X + 1
	if side > 0 {
		at = end.X - 1 - w
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

// askedHigh is the room that it takes.
func (p *part) askedHigh() float64 {
	high := 2*letter + 2*small + 2 + 2*(boxHigh+1)
	if p.face != nil && len(p.face.bolts) > 0 {
		high += small + 1 + boxHigh + 2
	}
	return high
}

// askedWide is how wide the frames are, with the words beside them.
var askedWide = boxHigh + boxWide(widestZone) + boxWide("A") + boxWide("B") + 1 + width(small, "across")

// widestZone sets the width of the cells of zones.
const widestZone = "Ø0.000"

// asked writes whose arm it is, and what is asked of the hole and of the bolts, between the
// view from above and that from the end.
func (p *part) asked(plan, k *sheetView, right, left, side, top float64, hand string) {
	x, near := right+viewGap, 0.0
	if side < 0 {
		x, near = left-viewGap-askedWide, askedWide+0.5
	}
	y := top - letter
	k.text(words, x, y, letter, dxf.Left, upper(p.Side+" arm"))
	y -= small + 1
	k.text(words, x, y, small, dxf.Left, hand)
	y -= boxHigh + 1.5
	hole := plan.place(p.hole)
	k.leader(x+near, y+boxHigh/2, hole.X+side*p.boss()/2*k.scale, hole.Y)
	for i, z := range p.Part.Zones {
		y = k.frame(x, y, p.zone(i, z.Width), []string{"A", "B"}[:p.datums()], [2]string{"across", "along"}[i])
	}
	if p.face == nil || len(p.face.bolts) == 0 {
		return
	}
	size := "Ø" + p.length(p.bolt)
	if p.bolt == 0 {
		size = "Ø ________"
	}
	y += boxHigh - small - 1
	k.text(words, x, y, small, dxf.Left, strconv.Itoa(len(p.face.bolts))+"x "+size+" BOLTS")
	y -= boxHigh + 1
	k.frame(x, y, "Ø", []string{"A"}, "")
	k.datum(x+boxHigh+boxWide(widestZone)+boxWide("A"), y+boxHigh/2, 1, 0, "B")
	bolt := k.place(p.face.bolts[0])
	for _, b := range p.face.bolts {
		if c := k.place(b); c.Y > bolt.Y {
			bolt = c
		}
	}
	k.leader(x+boxHigh, y, bolt.X, bolt.Y+p.bolt/2*k.scale)
}

// datums is how many datums there are.
func (p *part) datums() int {
	if p.face != nil && len(p.face.bolts) == 0 {
		return 1
	}
	return 2
}

// zone writes the width of a position zone; empty, to be filled in, where nothing is assumed.
func (p *part) zone(i int, wide float64) string {
	text := ""
	if wide > 0 {
		text = p.length(p.study.Units.Millimetres(wide))
	}
	if i == 0 {
		text = "Ø" + text
	}
	return text
}

// frame draws a tolerance frame of position by ISO 1101 and returns where the next one
// stands. The cells of all frames are alike.
func (k *pen) frame(x, y float64, zone string, datums []string, of string) (next float64) {
	const r = letter / 2
	c := dxf.Point{X: x + boxHigh/2, Y: y + boxHigh/2}
	k.rect(dimension, x, y, boxHigh, boxHigh)
	k.add(dxf.Circle{Layer: dimension, Centre: c, Radius: r})
	k.line(dimension, c.X-1.5*r, c.Y, c.X+1.5*r, c.Y)
	k.line(dimension, c.X, c.Y-1.5*r, c.X, c.Y+1.5*r)
	wide := boxWide(widestZone)
	k.rect(dimension, x+boxHigh, y, wide, boxHigh)
	k.text(dimension, x+boxHigh+wide/2, y+letter/2, letter, dxf.Middle, zone)
	x += boxHigh + wide
	for _, d := range datums {
		x = k.box(x, y, d)
	}
	k.text(words, x+1, y+boxHigh/2-small/2, small, dxf.Left, of)
	return y - boxHigh - 1
}
