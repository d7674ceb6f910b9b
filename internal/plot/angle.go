package plot

import "math"

// Angle draws the angle at a vertex between the directions to a and to b, on the
// arc of a radius: the smaller way round. Text of width by size stands beyond the
// middle of the arc. The extension lines run from the vertex to the arc.
func (d *Dimension) Angle(vertex, a, b Point, radius, width, size float64) {
	first, second := a.Sub(vertex).Unit(), b.Sub(vertex).Unit()
	from, to := vertex.Add(first.Times(radius)), vertex.Add(second.Times(radius))
	clockwise := first.Across().Dot(second) >= 0
	d.Lines = appendLeg(appendLeg(d.Lines[:0], vertex, from, size), vertex, to, size)
	d.Lines = d.Lines.MoveTo(from).ArcTo(radius, radius, 0, false, clockwise, to)
	d.Heads = d.arcHeads(from, to, first, second, clockwise, size)
	d.Text = d.beyondArc(vertex, first, second, radius, width, size)
}

// arcHeads returns the arrow heads at the ends of an arc, along it; on a short arc
// they stand outside.
func (d *Dimension) arcHeads(from, to, first, second Point, clockwise bool, size float64) Path {
	back := size
	if !clockwise {
		back = -back
	}
	if from.Sub(to).Length() < 2.5*size*headLength {
		back = -back
	}
	heads := AppendHead(d.Heads[:0], from, first.Across().Times(back))
	return AppendHead(heads, to, second.Across().Times(-back))
}

// beyondArc returns the place of an upright text clear of the arc, whichever way
// the middle of the arc lies.
func (d *Dimension) beyondArc(vertex, first, second Point, radius, width, size float64) Anchor {
	middle := first.Add(second)
	if middle.Length() < 1e-9 { // opposite: a quarter turn is the middle
		middle = first.Across()
	}
	middle = middle.Unit()
	// The reach of a box of width by size in that direction.
	reach := (math.Abs(middle.X)*width + math.Abs(middle.Y)*size) / 2
	at := vertex.Add(middle.Times(radius + reach + size*clearance))
	return Anchor{At: at.Add(Point{0, size * capHeight / 2}), Align: Middle}
}

// appendLeg appends the line from the vertex past the arc.
func appendLeg(dst Path, vertex, foot Point, size float64) Path {
	return dst.Polyline(vertex, foot.Add(foot.Sub(vertex).Unit().Times(size*overshoot)))
}
