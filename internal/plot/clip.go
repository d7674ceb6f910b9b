package plot

// clip returns the part of the line from a to b that lies in r, by the method of
// Liang and Barsky: each edge cuts the range of the fraction t. Ends within r come
// back unchanged to the bit.
func (r Rect) clip(a, b Point) (Point, Point, bool) {
	enter, leave := 0.0, 1.0
	d := b.Sub(a)
	ok := cut(-d.X, a.X-r.Min.X, &enter, &leave) && cut(d.X, r.Max.X-a.X, &enter, &leave) &&
		cut(-d.Y, a.Y-r.Min.Y, &enter, &leave) && cut(d.Y, r.Max.Y-a.Y, &enter, &leave)
	if !ok {
		return a, b, false
	}
	// Nearest, for rounding may put the crossing a hair outside.
	return r.nearest(a.Towards(b, enter)), r.nearest(a.Towards(b, leave)), true
}

// cut keeps of enter..leave the fractions t with speed·t <= room.
func cut(speed, room float64, enter, leave *float64) bool {
	switch {
	case speed == 0:
		return room >= 0
	case speed < 0:
		*enter = max(*enter, room/speed)
	default:
		*leave = min(*leave, room/speed)
	}
	return *enter <= *leave
}

// pen draws a line through points and lifts itself outside an area and at gaps.
type pen struct {
	path Path
	area Rect
	prev Point
	down bool // prev is a point, not a gap
	ends bool // the path ends at prev
}

// to draws on to q, or lifts the pen if q is a gap.
func (p *pen) to(q Point) {
	switch {
	case !q.finite():
		p.down, p.ends = false, false
		return
	case p.down:
		p.line(q)
	}
	p.prev, p.down = q, true
}

// line draws what the area holds of the line from prev to q.
func (p *pen) line(q Point) {
	a, b, ok := p.area.clip(p.prev, q)
	if !ok {
		p.ends = false
		return
	}
	p.begin(a)
	p.path = p.path.LineTo(b)
	p.ends = b == q
}

// begin moves to a unless the path already ends there.
func (p *pen) begin(a Point) {
	if !p.ends || a != p.prev {
		p.path = p.path.MoveTo(a)
	}
}

// chords is the number of straight lines that stand for a cubic that leaves the area.
const chords = 12

// curve draws a cubic from prev to q: as one where its control points are within
// the area, else as chords, each cut at the edge.
func (p *pen) curve(c, d, q Point) {
	from := p.prev
	if p.area.Contains(from) && p.area.Contains(c) && p.area.Contains(d) && p.area.Contains(q) {
		p.begin(from)
		p.path = p.path.CurveTo(c, d, q)
		p.prev, p.ends = q, true
		return
	}
	for i := 1; i <= chords; i++ {
		p.to(bezier(from, c, d, q, float64(i)/chords))
	}
}

// bezier returns the point at t of the cubic a, b, c, d.
func bezier(a, b, c, d Point, t float64) Point {
	ab, bc, cd := a.Towards(b, t), b.Towards(c, t), c.Towards(d, t)
	return ab.Towards(bc, t).Towards(bc.Towards(cd, t), t)
}
