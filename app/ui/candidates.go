package ui

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// candidates compares the cars and changes the selected one.
type candidates struct {
	app.Compo
	Bench bench

	order model.Order
}

// Render shows the cars as cards.
func (c *candidates) Render() app.UI {
	rows := model.Table(c.Bench.cars(), c.Bench.Desk.View.Yardstick, c.order)
	return app.Div().Class("candidates").Body(
		c.head(),
		app.Ol().Class("cards").Body(
			app.Range(rows).Slice(func(i int) app.UI { return c.card(&rows[i]) }),
		),
		button("New candidate", c.add).Class("wide"),
		cautionLine(),
	)
}

// head shows what cars are sorted by and compared with, and what the numbers mean.
func (c *candidates) head() app.UI {
	d := c.Bench.document()
	n := c.Bench.numbers()
	w := d.SearchWindow()
	mm := d.Units.Millimetres
	return app.Div().Class("panel-head").Body(
		app.Div().Class("row").Body(
			menu("sort", "Sort by", c.sortValue(), sortChoices(), c.sort),
			menu("yardstick", "Compare with", strconv.Itoa(c.Bench.Desk.View.Yardstick), yardstickChoices(c.Bench.cars()), c.measure),
		),
		app.P().Class("note").Body(
			app.Text("Per wheel, "+model.In(n.ToeUnit())+"; over "+n.Travel(mm(w.Bump))+" "),
			explain("bump", aboutWindow),
			app.Text(" and "+n.Travel(mm(w.Droop))+" droop. Differences are from "),
			explain("the yardstick", aboutYardstick),
			app.Text("."),
		),
	)
}

func sortChoices() []choice {
	list := []choice{{"", "order of the study"}}
	for _, f := range model.TableFigures {
		list = append(list, choice{strconv.Itoa(int(f)), f.Label() + ", least first"})
	}
	return list
}

func (c *candidates) sortValue() string {
	if !c.order.ByFigure {
		return ""
	}
	return strconv.Itoa(int(c.order.Figure))
}

func (c *candidates) sort(_ app.Context, value string) {
	f, err := strconv.Atoi(value)
	c.order = model.Order{ByFigure: err == nil, Figure: model.Figure(f)}
}

func yardstickChoices(cars *model.Cars) []choice {
	var list []choice
	for _, car := range cars.List {
		list = append(list, choice{strconv.Itoa(car.Index), carName(car)})
	}
	return list
}

// measure makes another car the yardstick.
func (c *candidates) measure(ctx app.Context, value string) {
	i, _ := strconv.Atoi(value) // the values are our own
	c.Bench.edit(ctx, func() error { return c.Bench.Desk.SetYardstick(i) })
}

// carName is what a car is called on the page.
func carName(car *model.Car) string {
	if car.Index == 0 {
		return "base car"
	}
	return car.Name
}

// add adds a copy of the base car, selected.
func (c *candidates) add(ctx app.Context, _ app.Event) { c.duplicate(ctx, 0) }

// duplicate adds a copy of a car, selected, and gives the keyboard to its name.
func (c *candidates) duplicate(ctx app.Context, car int) {
	if c.Bench.edit(ctx, func() error { return c.Bench.Desk.Duplicate(car) }) == nil {
		c.Bench.keyboard(fmt.Sprintf("name-%d", c.Bench.Desk.View.Car))
	}
}
