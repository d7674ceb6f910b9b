package plot

import (
	"math"

	"toewright/internal/number"
)

// Contribution is the reach of a result, below and above its nominal value, that
// one contributor makes: a tolerance or a sensitivity.
type Contribution struct {
	Label     string
	Low, High float64
}

// reach is the larger of the two sides.
func (c Contribution) reach() float64 { return max(math.Abs(c.Low), math.Abs(c.High)) }

// Tornado adds a bar for each contribution, in the order given, from Low to High
// about a common zero line; labels stand at the left, the reach with the decimals at
// the right. All are on one scale, that of the largest.
func (p *Picture) Tornado(area Rect, list []Contribution, size float64, decimals int) {
	scale := tornadoScale(area, list, size)
	row := area.Height() / float64(max(len(list), 1))
	var bars Path
	for i, c := range list {
		middle := area.Min.Y + row*(float64(i)+0.5)
		from, to := scale.At(min(c.Low, c.High)), scale.At(max(c.Low, c.High))
		bars = bars.Rect(Rect{Point{from, middle - row*barPart/2}, Point{to, middle + row*barPart/2}})
		base := middle + size*capHeight/2
		p.Write("label", Anchor{At: Point{area.Min.X, base}}, size, c.Label)
		p.Write("figure", Anchor{At: Point{area.Max.X, base}, Align: End}, size, number.Decimal(c.reach(), decimals))
	}
	p.Draw("bar", bars)
	zero := scale.At(0)
	p.Draw("zero", Path{}.Polyline(Point{zero, area.Min.Y}, Point{zero, area.Max.Y}))
}

// barPart is the part of a row that its bar is high.
const barPart = 0.6

// tornadoScale leaves room for the labels, at most half of the width, and figures.
func tornadoScale(area Rect, list []Contribution, size float64) Scale {
	const figures = 5 // of the text's size
	widest, reach := 0.0, 0.0
	for _, c := range list {
		widest, reach = max(widest, TextWidth(c.Label, size)), max(reach, c.reach())
	}
	left := min(widest+size, area.Width()/2)
	return Scale{Domain{-reach, reach}, area.Min.X + left, area.Max.X - figures*size}
}
