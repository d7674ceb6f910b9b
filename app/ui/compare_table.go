package ui

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
)

// figures is the table. A touch on a column selects its car.
func (c *compare) figures(t *model.Comparison) app.UI {
	class := "compare-table"
	if len(t.Cars) > 6 {
		class += " many"
	}
	return app.Div().Class("compare-scroll").Role("region").Aria("label", "Cars compared").TabIndex(0).Body(
		app.Table().Class(class).ID("cars").OnClick(c.touch).Body(
			app.Caption().Class("unseen").Text("Cars and their figures. A box marks the best of a row, a cross a limit that is broken."),
			app.THead().Body(app.Tr().Body(
				app.Td().Class("compare-corner").Text(c.corner()),
				app.Range(t.Cars).Slice(func(i int) app.UI { return c.head(t, t.Cars[i]) }),
			)),
			app.TBody().Body(app.Range(t.Rows).Slice(func(i int) app.UI {
				return c.row(t, &t.Rows[i], i > 0 && t.Rows[i].Part != t.Rows[i-1].Part)
			})),
		),
	)
}

// corner says what the small curves are.
func (c *compare) corner() string {
	n := c.Bench.numbers()
	return fmt.Sprintf("Toe change by travel; shaded: within %s of the target", n.ToeNumber(c.Bench.session().ToeLimit())+" "+n.ToeMark())
}

// touch selects the car of the column that was touched.
func (c *compare) touch(ctx app.Context, e app.Event) {
	cell := e.Get("target").Call("closest", "[data-car]")
	if !cell.Truthy() || e.Get("target").Call("closest", "button").Truthy() {
		ctx.PreventUpdate()
		return
	}
	if car, err := strconv.Atoi(cell.Get("dataset").Get("car").String()); err == nil {
		c.pick(ctx, car)
	}
}

func (c *compare) pick(ctx app.Context, car int) {
	c.Bench.Desk.Select(car)
	c.Bench.Changed(ctx)
}

// column returns the classes of a car's cells.
func (c *compare) column(t *model.Comparison, car *model.Car) string {
	class := ""
	if car == t.Cars[0] {
		class += " reference"
	}
	if car == c.Bench.Desk.Selected() {
		class += " selected"
	}
	if car.Hidden {
		class += " hidden-car"
	}
	return class
}

// row is a figure of all cars.
func (c *compare) row(t *model.Comparison, r *model.CompareRow, opens bool) app.UI {
	class := ""
	if opens {
		class = "opens"
	}
	return app.Tr().Class(class).Body(
		app.Th().Scope("row").Body(c.rowHead(r)),
		app.Range(r.Cells).Slice(func(i int) app.UI { return c.cell(t, r, i) }),
	)
}

// sort puts the cars into another order, which is kept with what is looked at.
func (c *compare) sort(ctx app.Context, by model.CompareOrder) {
	c.State.order = by
	c.Bench.Changed(ctx)
}

// rowHead names a figure; a touch sorts the cars by it, once more the other way round, and
// then as the study has them.
func (c *compare) rowHead(r *model.CompareRow) app.UI {
	by, sign := &c.State.order, ""
	if by.Key == r.Key {
		sign = " ▸"
		if by.Back {
			sign = " ◂"
		}
	}
	return app.Button().Type("button").Class("compare-row").Title(r.Meaning).Aria("pressed", by.Key == r.Key).
		OnClick(func(ctx app.Context, _ app.Event) {
			next := model.CompareOrder{}
			if by.Key != r.Key || !by.Back {
				next = model.CompareOrder{Key: r.Key, Back: by.Key == r.Key}
			}
			c.sort(ctx, next)
		}, app.EventScope(r.Key)).
		Body(
			app.Text(r.Label),
			only(r.Note != "", func() app.UI { return app.Small().Text(" " + r.Note) }),
			only(sign != "", func() app.UI { return app.Span().Aria("hidden", true).Text(sign) }),
			only(r.Lacks != "", func() app.UI { return app.Small().Class("warning").Text(" " + r.Lacks) }),
		)
}

// cell is a figure of one car.
func (c *compare) cell(t *model.Comparison, r *model.CompareRow, i int) app.UI {
	k, car := &r.Cells[i], t.Cars[i]
	class := c.column(t, car)
	if k.Broken {
		class += " broken"
	}
	cell := app.Td().Class(class).DataSet("car", car.Index)
	if k.Title != "" {
		cell = cell.Title(k.Title)
	}
	if k.Waits && r.Lacks == "" {
		return cell.Body(app.Span().Class("waits").Title("being computed").Text("…"))
	}
	return cell.Body(c.value(k),
		only(k.Bar > 0, func() app.UI {
			return app.Raw(fmt.Sprintf(`<svg class="bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true"><path d="M0 0H%.1fV4H0Z"/></svg>`, 100*k.Bar))
		}),
		only(k.Spare != "", func() app.UI { return app.Small().Text(k.Spare) }))
}

// value is the number of a cell, or those of both sides, with what it means: a box for the
// best, a cross for a broken limit.
func (c *compare) value(k *model.CompareCell) app.UI {
	class := "value"
	if k.Best {
		class += " best"
	}
	return app.Span().Class(class).Body(
		only(k.Broken, func() app.UI { return app.Span().Class("cross").Text("✗ ") }),
		app.If(len(k.Text) < 2, func() app.UI { return app.Text(one(k.Text)) }).Else(func() app.UI {
			return app.Span().Class("sides").Body(
				app.Span().Body(app.Small().Text("L "), app.Text(k.Text[0])),
				app.Span().Body(app.Small().Text("R "), app.Text(k.Text[1])),
			)
		}),
		only(k.Best, func() app.UI { return app.Span().Class("unseen").Text(" best") }),
	)
}

func one(text []string) string {
	if len(text) == 0 {
		return number.Decimal(noNumber, 0)
	}
	return text[0]
}
