package ui

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// car enters the car as it was measured.
type car struct {
	app.Compo
	Bench  bench
	Panels *Panels
}

// Render shows the points, what looks like a slip, and what else is stated of the car.
func (c *car) Render() app.UI {
	d := c.Bench.document()
	mounts := model.Mounts(d)
	return app.Div().Class("car").Body(
		app.Div().Class("points-head").Body(
			app.H2().Text("Points"), app.Small().Text(c.Bench.numbers().LengthUnit()+", from the ground at the axle's centreline"),
			button("New from a template", c.template).ID("to-templates").Class("bare"),
		),
		c.Bench.borrowed(),
		c.unsolved(),
		c.doubts(),
		c.sides(),
		&pointGrid{Bench: c.Bench, State: &c.Panels.pointing, Draw: c.Panels.draw},
		app.P().Class("note").Body(
			app.Span().Class("by-keys").Text("Arrows walk the cells, Enter goes down, Tab across, F2 into a number, Esc gives it back. "),
			app.Text("A cell takes 27 3/16, 88.9 mm or 9.7 - 1/8; a block of a spreadsheet is pasted from the picked cell on."),
		),
		app.Div().Class("blocks").Body(
			c.vehicle(),
			c.tieRod(),
			many(app.Range(mounts).Slice(func(i int) app.UI { return c.mount(&mounts[i]) })),
			c.gear(),
			&loads{Bench: c.Bench},
			app.Section().Class("block").Body(notes(c.Bench, d.Notes), untouched(d)),
		),
		pointsTable(c.Bench),
		&datum{Bench: c.Bench},
	)
}

// template opens the templates of new studies.
func (c *car) template(app.Context, app.Event) {
	c.Panels.menu, c.Panels.templating = "study-menu", true
	c.Bench.keyboard("new-study")
}

// unsolved says why the car cannot be solved.
func (c *car) unsolved() app.UI {
	if base := c.Bench.cars().Base(); base != nil && base.Err == nil {
		return nothing()
	}
	err := c.Bench.cars().Err
	if base := c.Bench.cars().Base(); err == nil && base != nil {
		err = base.Err
	}
	return app.P().Class("problem").Role("alert").Text("This car cannot be solved: " + plain(err))
}

// doubts lists what looks like a slip; each leads to its place by one press.
func (c *car) doubts() app.UI {
	list := model.Doubts(c.Bench.document())
	if len(list) == 0 {
		return nothing()
	}
	return app.Section().ID("doubts").Class("doubts").Aria("label", "Doubts").Body(
		app.P().Body(app.Strong().Text("Doubts"), app.Small().Text(strconv.Itoa(len(list))+" to look at")),
		app.Ul().Class("findings").Body(app.Range(list).Slice(func(i int) app.UI {
			return c.Bench.slip(list[i].Finding, true, button("Go there", func(ctx app.Context, _ app.Event) { c.visit(ctx, &list[i]) }, list[i].Path, list[i].Message).Class("link").
				Aria("label", "Go there: "+study.SpokenPath(list[i].Path)))
		})),
	)
}

// visit goes to the place of a doubt.
func (c *car) visit(ctx app.Context, doubt *model.Doubt) {
	if doubt.Step != "car" {
		c.Bench.Open(ctx, doubt.Step)
		return
	}
	if doubt.Side != "" {
		c.Panels.pointing.right = doubt.Side == study.Right
	}
	c.Bench.keyboard(doubt.ID)
}

// vehicle shows what is needed of the rest of the car, and how the wheels stood.
func (c *car) vehicle() app.UI {
	d := c.Bench.document()
	return app.Section().Class("block").Body(
		app.H2().Text("Vehicle and wheels"),
		app.P().Class("note").Text(model.KindWords(d)),
		app.Div().Class("row").Body(
			c.length("wheelbase", "wheelbase", "Wheelbase", d.Vehicle.Wheelbase, func(d *study.Document, x float64) { d.Vehicle.Wheelbase = x }),
			c.length("tyre-radius", "tyreRadius", "Tyre radius, loaded", d.Vehicle.TyreRadius, func(d *study.Document, x float64) { d.Vehicle.TyreRadius = x }),
			c.axle(),
			c.adjuster(),
		),
		c.static(c.Panels.pointing.side(d)),
		c.unstated(),
		app.P().Class("note").Body(
			app.Text("What they are: "), explain("wheelbase", aboutWheelbase), app.Text(", "), explain("loaded radius", aboutRadius), app.Text(", "),
			explain("static toe", aboutStaticToe), app.Text(", "), explain("camber", aboutCamber), app.Text("."),
		),
		c.values(model.VehicleValues(d)),
		c.Bench.carTravel(),
	)
}

// unstated says what stands for the numbers of the vehicle that are not stated.
func (c *car) unstated() app.UI {
	words := model.UnstatedVehicle(c.Bench.document())
	return only(words != "", func() app.UI { return app.P().ID("unstated").Class("note").Text(words) })
}

// length is the field of a length of the vehicle, empty where it is not stated.
func (c *car) length(id, key, label string, value float64, put func(*study.Document, float64)) app.UI {
	n, d := c.Bench.numbers(), c.Bench.document()
	text := ""
	if value != 0 {
		text = n.LengthNumber(d.Units.Millimetres(value))
	}
	return &field{
		ID: id, Label: label, Unit: n.LengthUnit(), Value: text, Tag: model.SourceTag(d, "vehicle."+key),
		Set: func(ctx app.Context, text string) error {
			return c.Bench.change(ctx, func() error { return c.Bench.session().SetVehicle(label, text, put) })
		},
	}
}

// static shows the toe and the camber that the points stand for.
func (c *car) static(side study.Side) app.UI {
	corner := c.Bench.document().Suspension.Corner(side)
	set := func(label string, put func(*study.Corner, float64)) func(app.Context, string) error {
		return func(ctx app.Context, text string) error {
			x, err := number.ParseDegrees(text)
			if err != nil {
				return err
			}
			return c.Bench.change(ctx, func() error {
				return c.Bench.session().SetStatic(side, label, func(k *study.Corner) { put(k, x) })
			})
		}
	}
	return app.Div().Class("row").Body(
		&field{ID: "static-toe-" + string(side), Label: "Static toe, toe-in positive", Unit: "deg", Value: number.Decimal(corner.Toe, 3), Tag: c.angleTag(side, "toe"),
			Set: set("static toe", func(k *study.Corner, x float64) { k.Toe = x })},
		&field{ID: "static-camber-" + string(side), Label: "Static camber", Unit: "deg", Value: number.Decimal(corner.Camber, 3), Tag: c.angleTag(side, "camber"),
			Set: set("static camber", func(k *study.Corner, x float64) { k.Camber = x })},
		c.Bench.keep(c.Bench.document().AnglePath(side, "toe"), "static toe"),
		c.Bench.keep(c.Bench.document().AnglePath(side, "camber"), "static camber"),
	)
}

// angleTag says where a static angle comes from.
func (c *car) angleTag(side study.Side, key string) string {
	d := c.Bench.document()
	return model.SourceTag(d, d.AnglePath(side, key))
}
