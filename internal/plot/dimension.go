package plot

import "math"

// Dimension is a dimension as it stands on a drawing. Its paths keep their memory
// when it is drawn again.
type Dimension struct {
	Lines Path   // extension lines and dimension line, to be stroked thin
	Heads Path   // arrow heads, to be filled
	Text  Anchor // of the figure, clear of the line
}

// sizes of a dimension in parts of the text's size.
const (
	headLength = 0.8
	headWidth  = 0.28
	clearance  = 0.25 // from the line to the text, and from the part to the extension line
	overshoot  = 0.35 // of the extension line beyond the dimension line
	tail       = 1.4  // of a dimension line whose arrows stand outside
)

// Straight draws the distance from a to b along a direction: of length, in parts,
// to the right for a length, up or down for a drop, along b - a for the true length.
// The dimension line lies off from a, square to the direction and clockwise of it
// where off is positive. Text of width by size is set along the line; where it and
// the arrows do not fit between the extension lines they stand outside.
func (d *Dimension) Straight(a, b, direction Point, off, width, size float64) {
	along := direction.Unit()
	across := along.Across()
	// The line runs from a's foot; b's foot is as far off, wherever b is.
	from := a.Add(across.Times(off))
	to := from.Add(along.Times(b.Sub(a).Dot(along)))
	d.Lines = appendExtension(d.Lines[:0], a, from, size)
	d.Lines = appendExtension(d.Lines, b, to, size)
	d.arrows(from, to, along, width, size)
}

// Horizontal draws the distance to the side between a and b, such as the length of
// an arm, with the line at the height y.
func (d *Dimension) Horizontal(a, b Point, y, width, size float64) {
	if a.X > b.X {
		a, b = b, a
	}
	d.Straight(a, b, Point{1, 0}, y-a.Y, width, size)
}

// Vertical draws the difference in height between a and b, such as the drop of a
// ball, with the line at x.
func (d *Dimension) Vertical(a, b Point, x, width, size float64) {
	if a.Y > b.Y {
		a, b = b, a
	}
	d.Straight(a, b, Point{0, 1}, a.X-x, width, size)
}

// arrows draws the dimension line from..to with its heads, and places the text.
func (d *Dimension) arrows(from, to, along Point, width, size float64) {
	length := to.Sub(from).Dot(along)
	if length < 0 {
		from, to, length = to, from, -length
	}
	head := along.Times(size)
	if length >= width+2*size*(headLength+clearance) {
		d.Lines = d.Lines.Polyline(from, to)
		d.Heads = AppendHead(AppendHead(d.Heads[:0], from, head), to, head.Times(-1))
		d.Text = textAlong(from.Towards(to, 0.5), along, Middle, size)
		return
	}
	// Arrows from outside, text beyond the second.
	d.Lines = d.Lines.Polyline(from.Sub(head.Times(tail)), to.Add(head.Times(tail)))
	d.Heads = AppendHead(AppendHead(d.Heads[:0], from, head.Times(-1)), to, head)
	d.Text = textAlong(to.Add(head.Times(tail+clearance)), along, Start, size)
}

// textAlong returns the anchor of a text that follows a line, above it where it
// stands in the middle, and never upside down.
func textAlong(at, along Point, align Align, size float64) Anchor {
	turn := upright(along.Angle())
	if turn != along.Angle() && align == Start {
		align = End
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	up := Point{sin, -cos} // of the text, on the paper
	lift := size * clearance
	if align != Middle {
		lift = -size * capHeight / 2
	}
	return Anchor{at.Add(up.Times(lift)), align, turn}
}

// capHeight is the height of figures in parts of the text's size.
const capHeight = 0.7

// appendExtension appends the line from a part to a little beyond the dimension line.
func appendExtension(dst Path, part, foot Point, size float64) Path {
	d := foot.Sub(part)
	if d.Length() <= size*clearance {
		return dst
	}
	unit := d.Unit().Times(size)
	return dst.Polyline(part.Add(unit.Times(clearance)), foot.Add(unit.Times(overshoot)))
}

// AppendHead appends an arrow head with its tip at tip; back leads from the tip into
// the head and has the text's size for its length.
func AppendHead(dst Path, tip, back Point) Path {
	foot := tip.Add(back.Times(headLength))
	side := back.Across().Times(headWidth / 2)
	return dst.Polygon(tip, foot.Add(side), foot.Sub(side))
}
