package ui

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
)

// compare is the step in which cars stand beside each other, and in which the selected one
// is changed.
type compare struct {
	app.Compo
	Bench bench
	State *comparing

	dragged int // car whose column is dragged; 0 for none, since that of the base car stays
}

// OnMount, OnUpdate and OnDismount ask for what is still to be computed, and call it off.
func (c *compare) OnMount(ctx app.Context)  { ctx.Defer(func(app.Context) { c.State.follow(c.Bench) }) }
func (c *compare) OnUpdate(ctx app.Context) { ctx.Defer(func(app.Context) { c.State.follow(c.Bench) }) }
func (c *compare) OnDismount()              { c.State.stop() }

// Render shows the bar, two cars laid over each other, the table, and the selected car.
func (c *compare) Render() app.UI {
	if err := c.Bench.cars().Err; err != nil {
		return app.Div().Body(
			app.P().Class("problem").Text("The base car cannot be solved: "+plain(err)),
			app.P().Text("Mend its points in Car; then there is something to compare."),
		)
	}
	t := c.table()
	class := "compare"
	if c.State.laid {
		class += " laid"
	}
	return app.Div().Class(class).Body(
		c.bar(),
		only(c.State.choosing, c.rowChoices),
		c.band(),
		c.figures(t),
		c.foot(),
		c.takeAway(t),
		&compareDetail{Bench: c.Bench, State: c.State, Shown: t.Cars},
		cautionLine(),
	)
}

// table is the comparison as it is asked for.
func (c *compare) table() *model.Comparison {
	s := c.State
	return c.Bench.Desk.Compare(s.answers(c.Bench), s.order, s.differences, s.shown)
}

// shown reports whether a row is wanted: as was chosen, or else as usual.
func (c *comparing) shown(r *model.CompareRow) bool {
	if on, chosen := c.rows[r.Key]; chosen {
		return on
	}
	return r.Usual
}

// bar says what is compared, and how it is shown.
func (c *compare) bar() app.UI {
	d, n := c.Bench.document(), c.Bench.numbers()
	w, mm := d.SearchWindow(), d.Units.Millimetres
	s := c.State
	return app.Div().Class("compare-bar").Body(
		app.H2().Text(number.Count(len(c.Bench.cars().List), "car")),
		app.P().Class("note").Text(fmt.Sprintf("each wheel, toe %s, from %s to %s",
			model.In(n.ToeUnit()), number.Signed(w.Bump, n.TravelNumber(mm(w.Bump))), n.Travel(mm(-w.Droop)))),
		menu("sort", "Order", s.order.Key, c.sortChoices(), func(ctx app.Context, key string) { c.sort(ctx, model.CompareOrder{Key: key}) }),
		pressed("lay-over", "A over B", s.laid, func() { s.laid = !s.laid }).Class("phone-only"),
		app.Div().Class("compare-more").Body(
			menu("yardstick", "Reference", strconv.Itoa(c.Bench.Desk.View.Yardstick), yardstickChoices(c.Bench.cars()), c.measure),
			app.Div().Class("segments").Role("group").Aria("label", "Numbers").Body(
				pressed("show-values", "Values", !s.differences, func() { s.differences = false }),
				pressed("show-differences", "Differences", s.differences, func() { s.differences = true }),
			),
			app.Button().Type("button").ID("choose-rows").Aria("expanded", s.choosing).Aria("controls", "rows").Text("Figures").
				OnClick(func(app.Context, app.Event) { s.choosing = !s.choosing }),
			showButton(c.Bench, "show-cars", "Show"),
			button("New candidate", func(ctx app.Context, _ app.Event) { c.Bench.duplicate(ctx, 0) }).ID("new-candidate"),
		),
		c.maker("make-it"),
	)
}

// foot is the selected car and the way on with it, where a phone has them under the table.
func (c *compare) foot() app.UI {
	car := c.Bench.Desk.Selected()
	list := c.Bench.Desk.ShortChanges(car)
	return app.Div().Class("compare-foot no-print").Body(
		badge(car.Index), app.Strong().Text(carName(car)),
		app.Span().Class("note").Text(strings.Join(list, "; ")),
		showButton(c.Bench, "show-cars-below", "Show"),
		c.maker("make-it-below"),
	)
}

// maker leads on with the selected car.
func (c *compare) maker(id string) app.UI {
	name := "Make it"
	if car := c.Bench.Desk.Selected(); car != nil && car.Index > 0 && id == "make-it" {
		name = "Make " + car.Name
	}
	return app.Button().Type("button").ID(id).Class("primary").Body(app.Span().Class("clipped").Text(name)).
		OnClick(func(ctx app.Context, _ app.Event) { c.Bench.Open(ctx, "make") })
}

// pressed is a button of a row of which one holds.
func pressed(id, text string, on bool, do func()) app.HTMLButton {
	return app.Button().Type("button").ID(id).Aria("pressed", on).Text(text).OnClick(func(app.Context, app.Event) { do() })
}

func yardstickChoices(cars *model.Cars) []choice {
	var list []choice
	for _, car := range cars.List {
		list = append(list, choice{strconv.Itoa(car.Index), carName(car)})
	}
	return list
}

// measure makes another car the reference.
func (c *compare) measure(ctx app.Context, value string) {
	i, _ := strconv.Atoi(value) // the values are our own
	c.Bench.edit(ctx, func() error { return c.Bench.Desk.SetYardstick(i) })
}

func (c *compare) sortChoices() []choice {
	list := []choice{{"", "study's order"}}
	for _, r := range c.Bench.Desk.CompareRows() {
		if c.State.shown(&r) {
			list = append(list, choice{r.Key, r.Label + ", best first"})
		}
	}
	return list
}

// rowChoices are the rows that can be shown.
func (c *compare) rowChoices() app.UI {
	rows := c.Bench.Desk.CompareRows()
	return app.FieldSet().ID("rows").Class("compare-rows choices").Body(
		app.Legend().Text("Figures shown"),
		app.Range(rows).Slice(func(i int) app.UI {
			r, id := rows[i], fmt.Sprintf("row-%d", i)
			return app.Span().Class("choice").Body(
				app.Input().Type("checkbox").ID(id).Checked(c.State.shown(&r)).OnChange(func(ctx app.Context, _ app.Event) {
					if c.State.rows == nil {
						c.State.rows = map[string]bool{}
					}
					c.State.rows[r.Key] = ctx.JSSrc().Get("checked").Bool()
				}, app.EventScope(r.Key)),
				app.Label().For(id).Text(r.Label),
			)
		}),
	)
}

// takeAway are the ways in which the table is taken along.
func (c *compare) takeAway(t *model.Comparison) app.UI {
	b := c.Bench
	return app.Div().Class("compare-take no-print").Body(
		button("Copy as text", func(ctx app.Context, _ app.Event) { b.copyTable(ctx, t.Text(carName)) }).ID("copy-text"),
		button("Copy as CSV", func(ctx app.Context, _ app.Event) { b.copyTable(ctx, string(t.CSV(carName))) }).ID("copy-csv"),
		button("Save as CSV", func(ctx app.Context, _ app.Event) {
			download(fileName(b.document().Name)+"-cars.csv", "text/csv", t.CSV(carName))
			b.Say(ctx, "The table is on its way to your downloads. "+caution, nil)
		}).ID("save-csv"),
		button("Print", func(app.Context, app.Event) { app.Window().Call("print") }).ID("print-table"),
	)
}

// copyTable puts a table on the clipboard and says so, or that the browser does not let it.
func (b bench) copyTable(ctx app.Context, text string) {
	if !app.Window().Get("navigator").Get("clipboard").Truthy() {
		b.Say(ctx, "This browser keeps the clipboard to itself here: save the table instead.", nil)
		return
	}
	copyText(b.Lasting, text, func(ctx app.Context) { b.Say(ctx, "The table is on the clipboard. "+caution, nil) })
}

// carName is what a car is called on the page.
func carName(car *model.Car) string {
	if car.Index == 0 {
		return "base car"
	}
	return car.Name
}

// duplicate adds a copy of a car, selected, and gives the keyboard to its name.
func (b bench) duplicate(ctx app.Context, car int) {
	err := b.change(ctx, func() error { return b.Desk.Duplicate(car) })
	b.tell(ctx, err)
	if err == nil {
		b.keyboard(fmt.Sprintf("name-%d", b.Desk.View.Car))
	}
}
