package plot

// Contours walks the contour lines of a field by marching squares. It keeps its
// memory from field to field:
//
//	c.Reset(grid, level)
//	for c.Next() {
//		draw(c.Line())
//	}
type Contours struct {
	grid   Grid
	level  float64
	seen   []uint8 // for each cell a bit for each edge
	cursor int     // the cell to look at next
	line   []Point
	closed bool
}

// Reset begins with the lines on which the field has the level.
func (c *Contours) Reset(g Grid, level float64) {
	cells := max(len(g.X)-1, 0) * max(len(g.Y)-1, 0)
	if cap(c.seen) < cells {
		c.seen = make([]uint8, cells)
	}
	c.seen = c.seen[:cells]
	clear(c.seen)
	c.grid, c.level, c.cursor = g, level, 0
}

// Next finds the next line; false says that there are no more.
func (c *Contours) Next() bool {
	for ; c.cursor < len(c.seen); c.cursor++ {
		if c.clear(c.cursor) {
			continue
		}
		at := cell{c.cursor % (len(c.grid.X) - 1), c.cursor / (len(c.grid.X) - 1)}
		for edge, partner := range c.grid.partners(at, c.level) {
			if partner != noEdge && !c.visited(gate{at, edge}) {
				c.walk(c.source(gate{at, edge}))
				return true
			}
		}
	}
	return false
}

// clear reports whether all corners of a cell lie on one side of the level, as those of
// nearly all cells do.
func (c *Contours) clear(index int) bool {
	columns := len(c.grid.X)
	corner := c.grid.Z[index+index/(columns-1):]
	above := corner[0] >= c.level
	return above == (corner[1] >= c.level) && above == (corner[columns] >= c.level) && above == (corner[columns+1] >= c.level)
}

// Line returns the points of the line, in the units of the grid. It is overwritten
// by Next.
func (c *Contours) Line() []Point { return c.line }

// Closed reports whether the line leads from its last point to its first.
func (c *Contours) Closed() bool { return c.closed }

// gate is an edge of a cell as seen from within the cell.
type gate struct {
	cell
	edge int
}

// mate returns the same edge as seen from the cell on its other side.
func (g gate) mate() gate {
	step := [4]struct{ col, row int }{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}[g.edge]
	return gate{cell{g.col + step.col, g.row + step.row}, (g.edge + 2) % 4}
}

// through returns the gate by which a line that enters by g leaves the cell; ok is
// false outside the grid and beside holes.
func (c *Contours) through(g gate) (out gate, ok bool) {
	if !c.grid.holds(g.cell) {
		return g, false
	}
	edge := c.grid.partners(g.cell, c.level)[g.edge]
	return gate{g.cell, edge}, edge != noEdge
}

// source follows a line backward to the gate where it enters the field, or, if it
// is closed, once round.
func (c *Contours) source(first gate) gate {
	at := first
	for {
		back, ok := c.through(at.mate())
		if !ok || back == first {
			return at
		}
		at = back
	}
}

// walk follows a line from the gate where it enters.
func (c *Contours) walk(in gate) {
	c.line = append(c.line[:0], c.crossing(in))
	for at := in; ; {
		out, ok := c.through(at)
		if !ok {
			c.closed = false
			return
		}
		c.visit(at)
		c.visit(out)
		if at = out.mate(); at == in {
			c.closed = true
			return
		}
		c.line = append(c.line, c.crossing(out))
	}
}

// crossing returns where the level lies on an edge. Both cells of an edge give the
// same point to the bit.
func (c *Contours) crossing(g gate) Point {
	from, to := g.edge, (g.edge+1)%4
	if g.edge >= 2 {
		from, to = to, from
	}
	a, b := c.grid.value(g.cell, from), c.grid.value(g.cell, to)
	return c.grid.place(g.cell, from).Towards(c.grid.place(g.cell, to), (c.level-a)/(b-a))
}

func (c *Contours) index(g gate) int { return g.row*(len(c.grid.X)-1) + g.col }

func (c *Contours) visited(g gate) bool { return c.seen[c.index(g)]>>g.edge&1 == 1 }

func (c *Contours) visit(g gate) { c.seen[c.index(g)] |= 1 << g.edge }

// AppendContour appends the contour lines of a level, cut at the edge of the frame.
func (f Frame) AppendContour(dst Path, c *Contours, g Grid, level float64) Path {
	for c.Reset(g, level); c.Next(); {
		dst = f.AppendContourLine(dst, c)
	}
	return dst
}

// AppendContourLine appends the line that a walk has come to, cut at the edge of the
// frame.
func (f Frame) AppendContourLine(dst Path, c *Contours) Path {
	p := pen{path: dst, area: f.Area}
	for _, q := range c.line {
		p.to(f.At(q.X, q.Y))
	}
	if c.closed {
		p.to(f.At(c.line[0].X, c.line[0].Y))
	}
	return p.path
}

// ContourLabel returns the place for the label of a line: half way along it, turned
// to follow it and never upside down. ok is false where that place lies outside
// the frame or the line, on the paper, is shorter than least.
func (f Frame) ContourLabel(line []Point, least float64) (label Anchor, ok bool) {
	length := 0.0
	for i := 1; i < len(line); i++ {
		length += f.leg(line, i).Length()
	}
	if !(length >= least) || len(line) < 2 {
		return Anchor{}, false
	}
	left := length / 2
	for i := 1; i < len(line); i++ {
		leg := f.leg(line, i)
		if l := leg.Length(); l < left {
			left -= l
			continue
		}
		at := f.At(line[i-1].X, line[i-1].Y).Add(leg.Unit().Times(left))
		return Anchor{at, Middle, upright(leg.Angle())}, f.Area.Contains(at)
	}
	return Anchor{}, false
}

// leg returns the step on the paper from point i-1 to point i of a line.
func (f Frame) leg(line []Point, i int) Point {
	return f.At(line[i].X, line[i].Y).Sub(f.At(line[i-1].X, line[i-1].Y))
}
