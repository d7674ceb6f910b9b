package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// The size of the small picture of a curve, in pixels.
const (
	sparkWidth  = 64.0
	sparkHeight = 72.0
	sparkInset  = 3.0
)

// sparkDomains returns the travel and the toe change, the same way in both directions,
// that all cars' curves fill.
func sparkDomains(c *model.Cars) (travel, toe plot.Domain) {
	lists := [][]float64{{-leastToe, leastToe}}
	for _, car := range c.List {
		for _, s := range solver.Sides {
			lists = append(lists, model.Spark(car, s).X)
		}
	}
	toe, _ = plot.DomainOf(lists...)
	travel, _ = plot.DomainOf(c.Travels)
	return travel, toe.Symmetric()
}

// leastToe is the toe change in radians that a small picture spans at least, so that
// a flat curve is drawn flat: 0.05 degrees.
var leastToe = solver.Deg(0.05).Radians()

// spark shows the toe curve of one side of a car with travel upward. The picture of
// the right wheel is mirrored, as on the sheet.
func spark(c *model.Cars, car *model.Car, s solver.Side) app.UI {
	travel, toe := sparkDomains(c)
	area := plot.Box(0, 0, sparkWidth, sparkHeight).Inset(sparkInset, sparkInset, sparkInset, sparkInset)
	line, zero := plot.AppendSpark(nil, nil, area, plot.Vertical, model.Spark(car, s), toe, travel)
	return app.Raw(fmt.Sprintf(
		`<svg class="spark" viewBox="0 0 %g %g" width="%g" height="%g" aria-hidden="true"><path class="zero" d="%s"/><path class="line s%d" d="%s"/></svg>`,
		sparkWidth, sparkHeight, sparkWidth, sparkHeight, zero, car.Index, line))
}

// swatch shows the line and the marker by which a car is known.
func swatch(index int) app.UI {
	line := plot.Path(nil).Polyline(plot.Point{X: 2, Y: 8}, plot.Point{X: 34, Y: 8})
	mark := plot.Path(nil).Marker(plot.SeriesStyle(index).Marker, plot.Point{X: 18, Y: 8}, 5)
	return app.Raw(fmt.Sprintf(
		`<svg class="swatch" viewBox="0 0 36 16" width="36" height="16" aria-hidden="true"><path class="line s%d" d="%s"/><path class="mark s%d" d="%s"/></svg>`,
		index, line, index, mark))
}
