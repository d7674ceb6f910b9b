package plot

import "math"

// Grid is a field of values over two parameters: Z[row*len(X)+col] stands at
// (X[col], Y[row]). X and Y grow. A NaN is a hole, where there was no result.
type Grid struct{ X, Y, Z []float64 }

// Levels returns round values within the field's range for contour lines, at most
// most. A level field has none.
func (g Grid) Levels(most int) []float64 {
	d, _ := DomainOf(g.Z)
	var levels []float64
	for _, tick := range Ticks(nil, d, most) {
		if tick.Value > d.Low && tick.Value < d.High {
			levels = append(levels, tick.Value)
		}
	}
	return levels
}

// corners of a cell, and its edges, are numbered the way round: edge i leads from
// corner i to the next.
var cornerSteps = [4]struct{ col, row int }{{0, 0}, {1, 0}, {1, 1}, {0, 1}}

// cell is a mesh of the grid, named by its corner of the least col and row.
type cell struct{ col, row int }

// holds reports whether the grid has the cell.
func (g Grid) holds(c cell) bool {
	return c.col >= 0 && c.row >= 0 && c.col < len(g.X)-1 && c.row < len(g.Y)-1
}

// value returns the value at a corner of a cell.
func (g Grid) value(c cell, corner int) float64 {
	s := cornerSteps[corner]
	return g.Z[(c.row+s.row)*len(g.X)+c.col+s.col]
}

// place returns the corner in the units of the two parameters.
func (g Grid) place(c cell, corner int) Point {
	s := cornerSteps[corner]
	return Point{g.X[c.col+s.col], g.Y[c.row+s.row]}
}

// noEdge says that a contour does not come through an edge.
const noEdge = -1

// partners returns for each edge of a cell the edge by which a contour of the level
// that enters there leaves; noEdge where none enters. A cell beside a hole has none.
func (g Grid) partners(c cell, level float64) [4]int {
	var z [4]float64
	above := 0
	for i := range z {
		z[i] = g.value(c, i)
		if !finite(z[i]) {
			return uncrossed
		}
		if z[i] >= level {
			above |= 1 << i
		}
	}
	if above == 5 || above == 10 {
		return saddle(z, level, above == 5)
	}
	return crossings[above]
}

var (
	uncrossed = [4]int{noEdge, noEdge, noEdge, noEdge}
	crossings = partnersByCorners()
)

// partnersByCorners returns the partners for each set of corners above the level
// that leaves two edges crossed, or none.
func partnersByCorners() (table [16][4]int) {
	for above := range table {
		table[above] = uncrossed
		var crossed []int
		for i := range 4 {
			if above>>i&1 != above>>((i+1)%4)&1 {
				crossed = append(crossed, i)
			}
		}
		if len(crossed) == 2 {
			a, b := crossed[0], crossed[1]
			table[above][a], table[above][b] = b, a
		}
	}
	return table
}

// saddle returns the partners of a cell with corners above and below in turn: the
// height of the pass of the bilinear surface says which pair is joined.
func saddle(z [4]float64, level float64, evenAbove bool) [4]int {
	pass := (z[0]*z[2] - z[1]*z[3]) / (z[0] + z[2] - z[1] - z[3])
	if (pass >= level) == evenAbove {
		return [4]int{1, 0, 3, 2} // corners 0 and 2 joined: 1 and 3 cut off
	}
	return [4]int{3, 2, 1, 0}
}

// Nearest returns the value at the place of the field nearest to a point, whose places
// are evenly spread.
func (g Grid) Nearest(x, y float64) float64 {
	return g.Z[nearest(g.Y, y)*len(g.X)+nearest(g.X, x)]
}

// nearest returns the index of the evenly spread value that is nearest to v.
func nearest(values []float64, v float64) int {
	last := len(values) - 1
	place := (v - values[0]) / (values[last] - values[0]) * float64(last)
	return min(max(int(math.Round(place)), 0), last)
}
