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

// askedFrame is how wide the frames of the hole are, and askedWide that with the words beside
// them.
var (
	askedFrame = boxHigh + boxWide(widestZone) + boxWide("A") + boxWide("B")
	askedWide  = askedFrame + 1 + width(small, zoneWords[0])
)

// widestZone sets the width of the cells of zones.
const widestZone = "Ø0.000"

// zoneWords say how each zone of the ball's centre lies to the stud; the notes say so too.
var zoneWords = [2]string{"across", "along"}

// askedHole draws what is asked of where the ball's centre lies, down from a place, and
// returns where the next frame would stand.
func (b *layout) askedHole(x, y float64) (next float64) {
	for i, z := range b.Part.Zones {
		y = b.frame(x, y, b.zone(i, z.Width), []string{"A", "B"}[:b.datums()], zoneWords[i])
	}
	return y
}

// askedBolts writes, down from a place, what the bolts are and that their holes are datum B,
// over the view square to the face.
func (k *sheetView) askedBolts(x, y float64) {
	if k.face == nil || len(k.face.bolts) == 0 {
		return
	}
	size := "Ø" + k.length(k.part.bolt)
	if k.part.bolt == 0 {
		size = "Ø ________"
	}
	y += boxHigh - small - 1
	k.text(words, x, y, small, dxf.Left, strconv.Itoa(len(k.face.bolts))+"x "+size+" BOLTS")
	y -= boxHigh + 1
	k.frame(x, y, "Ø", []string{"A"}, "")
	right := x + boxHigh + boxWide(widestZone) + boxWide("A")
	k.datum(right, y+boxHigh/2, 1, 0, "B")
	bolt := k.place(k.face.bolts[0])
	for _, b := range k.face.bolts {
		if c := k.place(b); c.Y > bolt.Y {
			bolt = c
		}
	}
	// From where the frame is nearest, so that no size stands between.
	k.leader(max(x, min(bolt.X, right)), y, bolt.X, bolt.Y+k.part.bolt/2*k.scale)
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
