package plot

// AppendBand appends the closed areas between two curves over the same values of
// the axis along, broken at gaps and cut at the edge of the frame: the spread of a
// tolerance, or what a fit leaves open.
func (f Frame) AppendBand(dst Path, along Axis, at, low, high []float64) Path {
	n := min(len(at), len(low), len(high))
	b := bander{frame: f, along: along, at: at, path: dst}
	for i := 0; i < n; i++ {
		end := i
		for end < n && finite(at[end]) && finite(low[end]) && finite(high[end]) {
			end++
		}
		b.area(low, high, i, end)
		i = max(i, end)
	}
	return b.path
}

// bander draws the outline of bands. Cutting a band is moving each of its two
// edges into the frame: what lies between the moved edges is what the frame holds.
type bander struct {
	frame Frame
	along Axis
	at    []float64
	path  Path
	last  Point
	begun bool
}

// area draws the band of the values from..to.
func (b *bander) area(low, high []float64, from, to int) {
	b.begun = false
	for i := from + 1; i < to; i++ {
		b.edge(b.point(low, i-1), b.point(low, i))
	}
	for i := to - 1; i > from; i-- {
		b.edge(b.point(high, i), b.point(high, i-1))
	}
	if b.begun {
		b.path = b.path.Close()
	}
}

func (b *bander) point(values []float64, i int) Point {
	if b.along == Vertical {
		return b.frame.At(values[i], b.at[i])
	}
	return b.frame.At(b.at[i], values[i])
}

// edge draws the line from p to q, moved into the frame: ends that lie beyond the
// axis are cut off, what lies beside it runs along the frame's edge.
func (b *bander) edge(p, q Point) {
	strip := b.frame.Area
	if b.along == Vertical {
		strip.Min.X, strip.Max.X = min(p.X, q.X), max(p.X, q.X)
	} else {
		strip.Min.Y, strip.Max.Y = min(p.Y, q.Y), max(p.Y, q.Y)
	}
	p, q, ok := strip.clip(p, q)
	if !ok {
		return
	}
	b.vertex(p)
	if inP, inQ, ok := b.frame.Area.clip(p, q); ok {
		b.vertex(inP)
		b.vertex(inQ)
	}
	b.vertex(q)
}

// vertex draws on to the place of the frame nearest to p.
func (b *bander) vertex(p Point) {
	p = b.frame.Area.nearest(p)
	switch {
	case !b.begun:
		b.path = b.path.MoveTo(p)
	case p != b.last:
		b.path = b.path.LineTo(p)
	}
	b.last, b.begun = p, true
}
