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
	sparkWidth  = 48.0
	sparkHeight = 48.0
	sparkInset  = 2.0
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

// spark shows the toe curves of a car with travel upward, that of the right wheel mirrored
// as on the sheet and dashed where it differs. Shaded is what lies within the limit.
func spark(b bench, car *model.Car) app.UI {
	travel, toe := sparkDomains(b.cars())
	area := plot.Box(0, 0, sparkWidth, sparkHeight).Inset(sparkInset, sparkInset, sparkInset, sparkInset)
	line, zero := plot.AppendSpark(nil, nil, area, plot.Vertical, model.Spark(car, solver.Left), toe, travel)
	other := plot.Path(nil)
	if !b.numbers().Alike(car) {
		other, _ = plot.AppendSpark(nil, nil, area, plot.Vertical, model.Spark(car, solver.Right), toe, travel)
	}
	half := min(b.session().ToeLimit().Radians(), toe.High)
	x := func(v float64) float64 { return area.Min.X + (v-toe.Low)/toe.Span()*area.Width() }
	shade := plot.Path(nil).Rect(plot.Box(x(-half), area.Min.Y, x(half)-x(-half), area.Height()))
	return app.Raw(fmt.Sprintf(
		`<svg class="spark" viewBox="0 0 %g %g" width="%g" height="%g" aria-hidden="true"><path class="shade" d="%s"/><path class="zero" d="%s"/><path class="line s%d" d="%s"/><path class="line other s%[7]d" d="%[9]s"/></svg>`,
		sparkWidth, sparkHeight, sparkWidth, sparkHeight, shade, zero, car.Index, line, other))
}

// swatch shows the line and the marker by which a car is known.
func swatch(index int) app.UI {
	line := plot.Path(nil).Polyline(plot.Point{X: 2, Y: 8}, plot.Point{X: 34, Y: 8})
	mark := plot.Path(nil).Marker(plot.SeriesStyle(index).Marker, plot.Point{X: 18, Y: 8}, 5)
	return app.Raw(fmt.Sprintf(
		`<svg class="swatch" viewBox="0 0 36 16" width="36" height="16" aria-hidden="true"><path class="line s%d" d="%s"/><path class="mark s%d" d="%s"/></svg>`,
		index, line, index, mark))
}

// badge is a car's mark alone.
func badge(index int) app.UI { return app.Raw(badgeMarkup(index)) }

func badgeMarkup(index int) string {
	mark := plot.Path(nil).Marker(plot.SeriesStyle(index).Marker, plot.Point{X: 8, Y: 8}, 5.5)
	return fmt.Sprintf(`<svg class="badge" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true"><path class="mark s%d" d="%s"/></svg>`, index, mark)
}
