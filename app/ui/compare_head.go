package ui

import (
	"math"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/solver"
)

// noNumber is written as a dash.
var noNumber = math.NaN()

// head is the head of a car's column: how it is drawn, its name, its curve and what it
// changes. It can be dragged to another place.
func (c *compare) head(t *model.Comparison, car *model.Car) app.UI {
	selected := car == c.Bench.Desk.Selected()
	movable := car.Index > 0 && car != t.Cars[0]
	head := app.Th().Scope("col").ID("car-"+strconv.Itoa(car.Index)).Class("compare-head"+c.column(t, car)).DataSet("car", car.Index).Draggable(movable)
	if movable {
		head = head.OnDragStart(func(ctx app.Context, e app.Event) {
			c.dragged = car.Index
			e.Get("dataTransfer").Call("setData", "text/plain", car.Name)
			ctx.PreventUpdate()
		}, app.EventScope(car.Index))
	}
	return head.OnDragOver(func(ctx app.Context, e app.Event) {
		if c.dragged != 0 {
			e.PreventDefault()
		}
		ctx.PreventUpdate()
	}).OnDrop(func(ctx app.Context, e app.Event) {
		e.PreventDefault()
		c.drop(ctx, t, car)
	}, app.EventScope("drop", car.Index)).Body(
		app.Div().Class("compare-name-line").Body(
			app.Button().Type("button").Class("compare-name").Aria("pressed", selected).Body(badge(car.Index), app.Span().Text(carName(car))).
				OnClick(func(ctx app.Context, _ app.Event) { c.pick(ctx, car.Index) }, app.EventScope("pick", car.Index)),
			c.tags(t, car),
		),
		c.glance(car),
	)
}

// tags say what else the car is.
func (c *compare) tags(t *model.Comparison, car *model.Car) app.UI {
	a, b := c.State.pair(c.Bench)
	var list []string
	for _, tag := range []struct {
		on   bool
		text string
	}{{car == t.Cars[0], "ref"}, {car == a && a != b, "A"}, {car == b && a != b, "B"}, {car.Hidden, "hidden"}, {locks(car), "locks"}} {
		if tag.on {
			list = append(list, tag.text)
		}
	}
	return app.Range(list).Slice(func(i int) app.UI { return app.Span().Class("tag").Text(list[i]) })
}

// locks reports whether the linkage locks within the window.
func locks(car *model.Car) bool {
	return car.Err == nil && !(car.Reach[solver.Left].Whole() && car.Reach[solver.Right].Whole())
}

// drop puts the column that is dragged before another, in the study itself.
func (c *compare) drop(ctx app.Context, t *model.Comparison, on *model.Car) {
	car := c.dragged
	c.dragged = 0
	c.Bench.moveColumn(ctx, c.State, t.Cars, car, on.Index)
}

// moveColumn puts a car's column in the place of another's, and so the candidate in the
// study: the order is the study's from then on.
func (b bench) moveColumn(ctx app.Context, s *comparing, shown []*model.Car, car, to int) {
	if car == to || car == 0 {
		return
	}
	var from, at int
	for i, k := range shown {
		if k.Index == car {
			from = i
		}
		if k.Index == to {
			at = i
		}
	}
	if from == 0 || at == 0 { // the reference stays
		return
	}
	list := append([]*model.Car(nil), shown...)
	moved := list[from]
	list = append(list[:from], list[from+1:]...)
	list = append(list[:at], append([]*model.Car{moved}, list[at:]...)...)
	b.edit(ctx, func() error { return b.Desk.Arrange(list) })
	s.order = model.CompareOrder{}
}

// glance is a car's curve, small, and what it changes; or why it has none.
func (c *compare) glance(car *model.Car) app.UI {
	if car.Err != nil {
		return app.P().Class("problem").Text("cannot be solved")
	}
	list := c.Bench.Desk.ShortChanges(car)
	if len(list) == 0 {
		list = []string{"as it stands"}
		if car.Index > 0 {
			list = []string{"changes nothing"}
		}
	}
	const most = 2 // lines; a column has no room for more
	if len(list) > most {
		list = append(list[:most-1:most-1], number.Count(len(list)-most+1, "more change"))
	}
	return app.Div().Class("compare-glance").Body(
		spark(c.Bench, car),
		app.Ul().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI { return app.Li().Text(list[i]) })),
	)
}
