package model

import (
	"cmp"
	"math"
	"sort"

	"toewright/internal/plot"
	"toewright/solver"
)

// Row is one car of a comparison.
type Row struct {
	*Car
	yard *Car // that differences are taken from
}

// Yardstick reports whether the car is the one that differences are taken from.
func (r *Row) Yardstick() bool { return r.Car == r.yard }

// Difference returns a side's figure less that of the yardstick; no number where either
// car cannot be solved.
func (r *Row) Difference(f Figure, s solver.Side) float64 {
	return f.Of(&r.Figures[s]) - f.Of(&r.yard.Figures[s])
}

// Order says by what the rows of a comparison are sorted.
type Order struct {
	ByFigure bool // else in the order of the study
	Figure   Figure
	Down     bool // largest first
}

// Table compares the cars of a study with one of them, the base car where the index
// yardstick is of none. A figure ranks by the side on which its size is larger; cars that
// cannot be solved come last.
func Table(c *Cars, yardstick int, by Order) []Row {
	yard := c.At(yardstick)
	if yard == nil {
		yard = c.Base()
	}
	rows := make([]Row, 0, len(c.List))
	for _, car := range c.List {
		rows = append(rows, Row{car, yard})
	}
	if by.ByFigure {
		sort.SliceStable(rows, func(i, j int) bool { return by.compare(rows[i], rows[j]) < 0 })
	}
	return rows
}

// compare orders two rows by the figure, those without it last.
func (o Order) compare(a, b Row) int {
	x, y := o.Figure.Worse(a.Car), o.Figure.Worse(b.Car)
	if xn, yn := math.IsNaN(x), math.IsNaN(y); xn || yn {
		return cmp.Compare(rank(xn), rank(yn))
	}
	if o.Down {
		x, y = y, x
	}
	return cmp.Compare(x, y)
}

func rank(last bool) int {
	if last {
		return 1
	}
	return 0
}

// Alike reports whether both sides of a car show the same numbers, so that they can
// be said once.
func (n Numbers) Alike(c *Car) bool {
	for _, f := range TableFigures {
		l, r := f.Of(&c.Figures[solver.Left]), f.Of(&c.Figures[solver.Right])
		if n.FigureNumber(f, l) != n.FigureNumber(f, r) {
			return false
		}
	}
	return true
}

// Spark returns a side's toe change in radians by travel in mm, as a small picture of
// a car shows it; nothing for a car without a curve.
func Spark(c *Car, s solver.Side) plot.Curve {
	var out plot.Curve
	rest := c.Rest(s)
	for _, p := range c.Curves[s].Positions {
		out.X = append(out.X, (p.Toe - rest.Toe).Radians())
		out.Y = append(out.Y, p.Travel)
	}
	return out
}
