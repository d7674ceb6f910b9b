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
	// Difference is each side's figures less those of the yardstick; no numbers
	// where either cannot be solved.
	Difference [2]Figures
	Yardstick  bool // the car is the one that differences are taken from
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
		r := Row{Car: car, Yardstick: car == yard}
		for _, s := range solver.Sides {
			r.Difference[s] = car.figures(s).less(yard.figures(s))
		}
		rows = append(rows, r)
	}
	if by.ByFigure {
		sort.SliceStable(rows, func(i, j int) bool { return by.compare(rows[i], rows[j]) < 0 })
	}
	return rows
}

// compare orders two rows by the figure, those without it last.
func (o Order) compare(a, b Row) int {
	x, y := o.Figure.worse(a.both()), o.Figure.worse(b.both())
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

// both returns the figures of both sides, no numbers for a car that is not solved.
func (c *Car) both() *[2]Figures { return &[2]Figures{c.figures(solver.Left), c.figures(solver.Right)} }

// figures returns those of a side, no numbers for a car that is not solved.
func (c *Car) figures(s solver.Side) Figures {
	if c.Err != nil {
		return noFigures()
	}
	return c.Figures[s]
}

func noFigures() Figures {
	nan := math.NaN()
	return Figures{RMS: solver.Angle(nan), Peak: solver.Angle(nan), PeakTravel: nan, PeakToPeak: solver.Angle(nan), Slope: nan}
}

// less returns f less y; the reach is f's own.
func (f Figures) less(y Figures) Figures {
	f.RMS -= y.RMS
	f.Peak -= y.Peak
	f.PeakTravel -= y.PeakTravel
	f.PeakToPeak -= y.PeakToPeak
	f.Slope -= y.Slope
	return f
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
func (c *Car) Spark(s solver.Side) plot.Curve {
	var out plot.Curve
	rest := atRest(&c.Curves[s])
	if rest == nil {
		return out
	}
	for _, p := range c.Curves[s].Positions {
		out.X = append(out.X, (p.Toe - rest.Toe).Radians())
		out.Y = append(out.Y, p.Travel)
	}
	return out
}
