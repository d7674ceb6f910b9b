package model

import (
	"cmp"
	"math"
	"slices"

	"toewright/internal/plot"
	"toewright/solver"
)

// Order says by what a list of cars is sorted.
type Order struct {
	ByFigure bool // else in the order of the study
	Figure   Figure
}

// Table lists the cars of a study. A figure ranks by the side on which its size is larger;
// cars that cannot be solved come last.
func Table(c *Cars, by Order) []*Car {
	list := slices.Clone(c.List)
	if by.ByFigure {
		slices.SortStableFunc(list, by.compare)
	}
	return list
}

// compare orders two cars by the figure, those without it last.
func (o Order) compare(a, b *Car) int {
	x, y := o.Figure.Worse(a), o.Figure.Worse(b)
	if xn, yn := math.IsNaN(x), math.IsNaN(y); xn || yn {
		return cmp.Compare(rank(xn), rank(yn))
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
