package ui

import (
	"cmp"
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// readings enters what the gauge says and fits the car to it.
type readings struct {
	app.Compo
	Bench bench
	State *reading
	Typed func() // to be called after any change of what is being typed
}

// reading is what is being typed, and the fit. It outlives the panel.
type reading struct {
	keypad model.Keypad
	fit    fitting
}

const aboutReadings = "What the gauge reads at each wheel travel, toe-in positive. Where the gauge was zeroed does not matter: its zero is found with the rest. Springs out, wheels hanging on stands rated for the car."

// Render shows the run that is typed, its rows and the fit.
func (r *readings) Render() app.UI {
	runs := model.Runs(r.Bench.document())
	r.State.keypad.Settle(r.Bench.session())
	return app.Div().Class("readings").Body(
		app.P().Class("note").Text(aboutReadings),
		r.Bench.borrowedList("readings"),
		r.choose(runs),
		app.If(len(runs) > 0, func() app.UI { return r.current(runs[r.State.keypad.Run]) }),
		readingsTable(r.Bench),
		&fit{Bench: r.Bench, State: &r.State.fit},
	)
}

// choose shows the runs, and begins one.
func (r *readings) choose(runs []model.Run) app.UI {
	d := r.Bench.document()
	var list []choice
	for i, run := range runs {
		list = append(list, choice{strconv.Itoa(i), runName(d, i, run)})
	}
	cars := yardstickChoices(r.Bench.cars())
	return app.Div().Class("row").Body(
		app.If(len(list) == 0, func() app.UI {
			return app.P().ID("no-readings").Text("No readings yet. Choose below which car's parts were on, and the keys appear; or take a table.")
		}),
		app.If(len(list) > 0, func() app.UI {
			return menu("run", "Run of the gauge", strconv.Itoa(r.State.keypad.Run), list, func(_ app.Context, value string) {
				run, _ := strconv.Atoi(value) // the values are our own
				r.typed(func(k *model.Keypad) { k.Choose(r.Bench.session(), run) })
			})
		}),
		menu("new-run", "New run, with the parts of", "", append([]choice{{"", "choose the car"}}, cars...), r.begin),
	)
}

// runName says which parts were on the car and which way the run went.
func runName(d *study.Document, i int, run model.Run) string {
	set := &d.Readings[run.First()]
	name := cmp.Or(set.Note, "parts as measured")
	if set.Direction != "" {
		name += ", into " + set.Direction
	}
	if set.Purpose == "verify" {
		name += ", to verify"
	}
	return fmt.Sprintf("%d: %s", i+1, name)
}

// begin begins a run with the parts of a car.
func (r *readings) begin(ctx app.Context, value string) {
	i, err := strconv.Atoi(value)
	if err != nil {
		return
	}
	r.Bench.edit(ctx, func() error {
		at, err := r.Bench.session().AddRun(r.Bench.cars().At(i))
		if err == nil {
			r.typed(func(k *model.Keypad) { k.Choose(r.Bench.session(), at) })
		}
		return err
	})
}

// current shows a run: its gauge, the keys and what was read.
func (r *readings) current(run model.Run) app.UI {
	return app.Section().Class("block").Body(
		&gauge{Bench: r.Bench, Run: run},
		r.pad(),
		r.rows(run),
		app.If(len(run.Findings(r.Bench.document())) > 0, func() app.UI {
			found := run.Findings(r.Bench.document())
			return app.Ul().Class("findings").Body(app.Range(found).Slice(func(i int) app.UI { return r.Bench.slip(found[i], false) }))
		}),
		button("Remove this run", func(ctx app.Context, _ app.Event) {
			r.Bench.undoable(ctx, "The run is removed.", func() error { return r.Bench.session().RemoveRun(run) })
		}, run.First()).Class("danger"),
	)
}

// rows lists what was read.
func (r *readings) rows(run model.Run) app.UI {
	d, n := r.Bench.document(), r.Bench.numbers()
	rows := run.Rows(d)
	if len(rows) == 0 {
		return app.P().Text("Nothing is read yet. Type the travel, the left and the right reading; Next goes on by itself.")
	}
	value := func(x *float64) string {
		if x == nil {
			return "–"
		}
		return n.LengthNumber(d.Units.Millimetres(*x))
	}
	return app.Table().Class("figures sheet-table travels").Body(
		app.Caption().Text("Read "+model.In(n.LengthUnit())+", toe-in positive"),
		app.THead().Body(app.Tr().Body(
			app.Th().Scope("col").Text("travel"), app.Th().Scope("col").Text("left"), app.Th().Scope("col").Text("right"), app.Td(),
		)),
		app.TBody().Body(app.Range(rows).Slice(func(i int) app.UI {
			row := rows[i]
			return app.Tr().Body(
				app.Th().Scope("row").Text(n.Travel(d.Units.Millimetres(row.Travel))),
				app.Td().Text(value(row.Values[0])), app.Td().Text(value(row.Values[1])),
				app.Td().Body(button("Remove", func(ctx app.Context, _ app.Event) {
					r.Bench.undoable(ctx, "The reading is removed.", func() error { return r.Bench.session().RemoveReading(run, row.Travel) })
				}, run.First(), row.Travel).Aria("label", "Remove the reading at "+n.Travel(d.Units.Millimetres(row.Travel)))),
			)
		})),
	)
}
