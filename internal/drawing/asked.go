package drawing

import (
	"strconv"

	"toewright/internal/drawing/dxf"
)

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
