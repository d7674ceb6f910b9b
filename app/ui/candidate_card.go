package ui

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// card shows one car: how it is drawn, its curve and its numbers and, of the selected
// one, what can be changed.
func (c *candidates) card(r *model.Row) app.UI {
	selected := c.Bench.Desk.Selected() == r.Car
	class := fmt.Sprintf("card car%d", r.Index)
	if selected {
		class += " selected"
	}
	if r.Hidden {
		class += " hidden-car"
	}
	return app.Li().Class(class).ID(fmt.Sprintf("car-%d", r.Index)).Body(
		app.Div().Class("card-head").Body(
			swatch(r.Index),
			app.Button().Type("button").Class("card-name").Aria("pressed", selected).Text(carName(r.Car)).
				OnClick(func(ctx app.Context, _ app.Event) { c.pick(ctx, r.Index) }, app.EventScope("pick", r.Index)),
			app.If(r.Yardstick(), func() app.UI { return app.Span().Class("tag").Text("yardstick") }),
			app.If(r.Hidden, func() app.UI { return app.Span().Class("tag").Text("hidden") }),
		),
		c.body(r, selected),
		standing(c.Bench, r.Car, selected),
		app.If(selected, func() app.UI { return &carEditor{Bench: c.Bench, Car: r.Index} }),
		app.If(selected && r.Index > 0, func() app.UI { return c.deeds(r) }),
	)
}

func (c *candidates) pick(ctx app.Context, car int) {
	c.Bench.Desk.Select(car)
	c.Bench.Changed(ctx)
}

// body shows the numbers, of a selected car all of them, or why there are none.
func (c *candidates) body(r *model.Row, selected bool) app.UI {
	if r.Err != nil {
		return app.P().Class("problem").Text(plain(r.Err))
	}
	alike := c.Bench.numbers().Alike(r.Car)
	return app.Div().Class("card-body").Body(
		spark(c.Bench.cars(), r.Car, solver.Left),
		app.If(!alike, func() app.UI { return spark(c.Bench.cars(), r.Car, solver.Right) }),
		c.figures(r, shown(selected), alike),
	)
}

// shown lists the figures of a card: all of the selected one, else those that rank.
func shown(selected bool) []model.Figure {
	if selected {
		return model.TableFigures
	}
	return []model.Figure{model.RMSFigure, model.PeakFigure}
}

// figures is a table of the figures of each side, or of both where they are alike.
func (c *candidates) figures(r *model.Row, list []model.Figure, alike bool) app.UI {
	sides := []solver.Side{solver.Left, solver.Right}
	if alike {
		sides = sides[:1]
	}
	class := "figures"
	if !alike {
		class += " both-sides"
	}
	return app.Table().Class(class).Body(
		app.Caption().Class("unseen").Text("Figures of "+carName(r.Car)),
		app.If(!alike, func() app.UI {
			return app.THead().Body(app.Tr().Body(app.Td(), app.Th().Scope("col").Text("left"), app.Th().Scope("col").Text("right")))
		}),
		app.TBody().Body(
			app.Range(list).Slice(func(i int) app.UI { return c.figure(r, list[i], sides) }),
			c.reach(r, sides),
		),
	)
}

// figure is a row of the table: a figure and its difference from the yardstick's.
func (c *candidates) figure(r *model.Row, f model.Figure, sides []solver.Side) app.UI {
	n := c.Bench.numbers()
	return app.Tr().Body(
		app.Th().Scope("row").Body(explain(f.Label(), f.Meaning()+" "+sentence(model.In(n.FigureUnit(f))))),
		app.Range(sides).Slice(func(i int) app.UI {
			s := sides[i]
			return app.Td().Body(
				app.Text(n.FigureNumber(f, f.Of(&r.Figures[s]))),
				app.If(!r.Yardstick(), func() app.UI { return app.Span().Class("difference").Text(difference(n, r, f, s)) }),
			)
		}),
	)
}

// difference writes how far a figure is from the yardstick's. Where the peak stands is
// no better or worse.
func difference(n model.Numbers, r *model.Row, f model.Figure, s solver.Side) string {
	if f == model.PeakTravelFigure {
		return ""
	}
	return n.DifferenceNumber(f, r.Difference(f, s))
}

// reach is a row of the table that says where the linkage locks, if it does.
func (c *candidates) reach(r *model.Row, sides []solver.Side) app.UI {
	if r.Reach[solver.Left].Whole() && r.Reach[solver.Right].Whole() {
		return nil
	}
	n := c.Bench.numbers()
	return app.Tr().Class("warning").Body(
		app.Th().Scope("row").Text("Reach"),
		app.Range(sides).Slice(func(i int) app.UI { return app.Td().Text(n.ReachText(&r.Reach[sides[i]])) }),
	)
}

// deeds are the buttons for what can be done with a candidate.
func (c *candidates) deeds(r *model.Row) app.UI {
	i, s := r.Index, c.Bench.session()
	last := len(c.Bench.document().Candidates)
	hide := "Hide"
	if r.Hidden {
		hide = "Show"
	}
	return app.Div().Class("deeds").Body(
		button("Duplicate", func(ctx app.Context, _ app.Event) { c.duplicate(ctx, i) }, i),
		button(hide, func(ctx app.Context, _ app.Event) {
			c.Bench.edit(ctx, func() error { return s.Hide(i, !r.Hidden) })
		}, i),
		c.mover("Up", i, i-1).Disabled(i == 1 || c.order.ByFigure),
		c.mover("Down", i, i+1).Disabled(i == last || c.order.ByFigure),
		button("Delete", func(ctx app.Context, _ app.Event) {
			c.Bench.undoable(ctx, r.Name+" is deleted.", func() error { return c.Bench.Desk.Delete(i) })
			c.Bench.keyboard("toast-undo")
		}, i).Class("danger"),
	)
}

// mover is the button that puts a candidate at the place of another. The keyboard stays
// on it, or where it ends goes to the one that leads back.
func (c *candidates) mover(word string, from, to int) app.HTMLButton {
	id := func(word string, car int) string { return fmt.Sprintf("%s-%d", strings.ToLower(word), car) }
	return button(word, func(ctx app.Context, _ app.Event) {
		c.Bench.edit(ctx, func() error { return c.Bench.Desk.Move(from, to) })
		c.Bench.keyboard(id("Up", to), id("Down", to), id(word, to))
	}, from).ID(id(word, from))
}
