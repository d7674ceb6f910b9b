package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/solver"
)

// pair returns the cars that are laid over each other: those that are pinned or else the
// reference and the selected car.
func (c *comparing) pair(b bench) (under, over *model.Car) {
	pick := func(name string, usual *model.Car) *model.Car {
		for _, car := range b.cars().List {
			if name != "" && car.Name == name {
				return car
			}
		}
		return usual
	}
	return pick(c.pinned[0], b.reference()), pick(c.pinned[1], b.Desk.Selected())
}

// band lays one car over another: curves, drawing, and what differs in figures.
func (c *compare) band() app.UI {
	a, b := c.State.pair(c.Bench)
	o, ok := scene.NewOverlay(b, a)
	if !ok {
		return nothing()
	}
	n := c.Bench.numbers()
	alike := n.Alike(a) && n.Alike(b)
	return app.Section().Class("compare-band").TabIndex(0).Aria("label", "Two cars laid over each other").Body(
		c.curves(a, b, alike),
		c.laid(o, a, b, alike),
		c.less(a, b),
	)
}

// The size of a chart of the band, and of its drawings, in pixels.
const (
	bandHeight = 216.0
	bandChart  = 330.0
	bandFront  = 430.0
	bandArm    = 216.0
)

// curves is the chart of all cars, in which the two are the strongest.
func (c *compare) curves(a, b *model.Car, alike bool) app.UI {
	n := c.Bench.numbers()
	var list []*model.Car
	for _, car := range c.Bench.cars().List {
		if car.Err == nil && (!car.Hidden || car == a || car == b) {
			list = append(list, car)
		}
	}
	sides, title := solver.Sides[:], "Toe change"
	if alike {
		sides, title = sides[:1], "Toe change, left = right"
	}
	width := bandChart * (1 + 0.6*float64(len(sides)-1))
	p := plot.Picture{Width: width, Height: bandHeight}
	for i, side := range sides {
		area := plot.Box(float64(i)*width/float64(len(sides)), 0, width/float64(len(sides)), bandHeight)
		chart := model.CurvesChart(n, c.Bench.cars(), side, list, area, chartText)
		chart.Bare = true
		for k := range chart.Series {
			s := &chart.Series[k]
			switch s.Style {
			case b.Index:
				s.Class = "strongest"
			case a.Index:
				s.Class = "strong"
			default:
				s.Class = "weak"
			}
			s.Markers = 0
			if s.Class != "weak" {
				s.Markers = 5 // of steps of the sweep
			}
		}
		chart.Series = append([]plot.ChartSeries{model.TargetBand(n, c.Bench.cars(), side, c.Bench.session().ToeLimit())}, chart.Series...)
		if !alike {
			chart.X.Label = side.String() + ": " + chart.X.Label
		}
		p.Chart(chart)
	}
	return figure("compare-curves", title, "", p, title+" of all cars; the strongest is "+carName(b)+", then "+carName(a))
}

// figure is a picture with its heading.
func figure(class, title, note string, p plot.Picture, spoken string) app.UI {
	d := plot.Document{Title: spoken, Picture: p}
	return app.Figure().Class(class).Body(
		app.FigCaption().Body(app.Strong().Text(title), only(note != "", func() app.UI { return app.Small().Text(note) })),
		app.Raw(string(d.AppendInline(nil))),
	)
}

// laid is the drawing of one car over the other, from behind and of the left arm.
func (c *compare) laid(o *scene.Overlay, a, b *model.Car, alike bool) app.UI {
	title := "B over A"
	if a == b {
		title = carName(b)
	}
	note := "rear view; dashed: " + carName(a)
	if alike {
		note = "rear view, half; dashed: " + carName(a)
	}
	return app.Div().Class("drawing compare-laid").Body(
		figure("", title, note, o.Front(b.Axle.TyreRadius(), alike, bandFront, bandHeight), carName(b)+" laid over "+carName(a)+", from behind"),
		figure("", "Left arm", "from the left", o.Arm(bandArm, bandHeight), "Left steering arms of both, from the left"),
	)
}

// less lists by how much the car on top differs from the one beneath.
func (c *compare) less(a, b *model.Car) app.UI {
	if a == b {
		return app.Div().Class("compare-less").Body(app.P().Class("note").Text("Touch another column, and it is laid over the reference. A and B can be pinned to any two cars below."))
	}
	list := c.Bench.Desk.LessThan(b, a)
	return app.Div().Class("compare-less").Body(
		app.H3().Text("B less A"),
		app.Dl().Body(app.Range(list).Slice(func(i int) app.UI {
			return app.Div().Body(app.Dt().Text(list[i].Label), app.Dd().Text(list[i].Text))
		})),
	)
}
