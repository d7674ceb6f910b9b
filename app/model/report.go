package model

import (
	"toewright/internal/number"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// SheetTravels returns the travels that a bench sheet lists: each 10 mm or half inch of
// the window, as far as the curves have them, its ends and 0.
func SheetTravels(d *study.Document, c *Cars) []float64 {
	every := 10.0
	if d.Style().Units == study.Inch {
		every = 12.7
	}
	var list []float64
	for i := len(c.Travels) - 1; i >= 0; i-- {
		t := c.Travels[i]
		n := t / every
		if i == 0 || i == len(c.Travels)-1 || n-float64(int(n)) == 0 {
			list = append(list, t)
		}
	}
	return list
}

// CurvesCSV returns the toe changes of all cars as a table in the units shown: travel,
// then left and right of each car. What is not reached stays empty. No title starts with
// what a spreadsheet takes for a formula, whatever a car is called.
func CurvesCSV(n Numbers, c *Cars) []byte {
	rows := [][]string{{"travel (" + n.LengthUnit() + ")"}}
	for _, car := range c.List {
		for _, s := range solver.Sides {
			rows[0] = append(rows[0], "toe change of "+car.Name+", "+s.String()+" ("+n.ToeUnit()+")")
		}
	}
	for _, t := range c.Travels {
		row := []string{number.Plain(n.TravelNumber(t))}
		for _, car := range c.List {
			for _, s := range solver.Sides {
				row = append(row, n.csvToe(car, s, t))
			}
		}
		rows = append(rows, row)
	}
	return study.FormatTable(rows)
}

// csvToe writes a toe change with all the decimals that are worth computing with.
func (n Numbers) csvToe(car *Car, s solver.Side, travel float64) string {
	a, ok := car.ToeChange(s, travel)
	if !ok {
		return ""
	}
	return number.Plain(number.Decimal(n.ToeValue(a), 6))
}

// CurvesChart returns a chart of a side's toe change of some cars with travel upward,
// in the units shown.
func CurvesChart(n Numbers, c *Cars, s solver.Side, cars []*Car, area plot.Rect, size float64) plot.Chart {
	chart := plot.Chart{Area: area, Size: size, Along: plot.Vertical, Mirrored: s == solver.Right}
	var toes [][]float64
	for _, car := range cars {
		curve := Spark(car, s)
		for i := range curve.X {
			curve.X[i] = n.ToeValue(solver.Angle(curve.X[i]))
			curve.Y[i] = n.Units.FromMillimetres(curve.Y[i])
		}
		toes = append(toes, curve.X)
		chart.Series = append(chart.Series, plot.ChartSeries{Name: car.Name, Style: car.Index, Curve: curve, Markers: 2})
	}
	toe, _ := plot.DomainOf(toes...)
	travel, _ := plot.DomainOf(c.Travels)
	chart.X = plot.ChartAxis{Domain: toe.Symmetric().Widen(2 * n.ToeValue(leastShown)).Nice(7), Label: "toe change, " + n.ToeUnit(), Signed: true}
	chart.Y = plot.ChartAxis{
		Domain: plot.Domain{Low: n.Units.FromMillimetres(travel.Low), High: n.Units.FromMillimetres(travel.High)},
		Label:  "travel, " + n.LengthUnit(), Fractions: n.Fractions(), Signed: true,
	}
	return chart
}

// TargetBand returns what lies within a limit of the wanted toe change of a side, for a
// chart of [CurvesChart].
func TargetBand(n Numbers, c *Cars, s solver.Side, limit solver.Angle) plot.ChartSeries {
	out := plot.ChartSeries{Readings: true}
	wanted := c.Target(s)
	for _, t := range c.Travels {
		at := wanted.At(t)
		out.Curve.Y = append(out.Curve.Y, n.Units.FromMillimetres(t))
		out.Curve.X = append(out.Curve.X, n.ToeValue(at))
		out.Low, out.High = append(out.Low, n.ToeValue(at-limit)), append(out.High, n.ToeValue(at+limit))
	}
	return out
}

// leastShown is the toe change to either side that a chart spans at least, so that a
// flat curve is drawn flat.
var leastShown = solver.Deg(0.05)
