package ui

import (
	"cmp"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/report"
	"toewright/solver"
)

// measuring are the cars of the series as they were measured, or what came of them.
type measuring = errand[engine.SeriesResult]

// keepCar moves the runs of the sheet to a car of the series.
type keepCar struct {
	app.Compo
	Bench bench
	typed string // in place of the name that is offered
}

// name is what the car is to be called.
func (k *keepCar) name() string { return cmp.Or(k.typed, model.NextCar(k.Bench.document())) }

// Render asks for the car's name.
func (k *keepCar) Render() app.UI {
	return app.Details().Class("block").Body(
		app.Summary().ID("keep-series").Text("A car of the series"),
		app.P().Class("note").Text("Read with its part on, over the whole travel, left and right. Kept, its runs go to the cars measured in Make, Series, and the run sheet is free for the next."),
		app.Div().Class("row").Body(
			&field{ID: "series-car", Label: "Keep these readings as car", Value: k.name(), Set: func(_ app.Context, text string) error {
				k.typed = text
				return nil
			}},
			button("Keep", k.keep).ID("series-keep"),
		),
	)
}

func (k *keepCar) keep(ctx app.Context, _ app.Event) {
	name := k.name()
	k.Bench.undoable(ctx, "Kept as "+name+": Make, Series has it.", func() error {
		err := k.Bench.session().KeepCar(name, time.Now().Format(time.DateOnly))
		if err == nil {
			k.typed = ""
		}
		return err
	})
}

// measured lists the cars of the series that were measured, and what they come to.
func (f *forge) measured() app.UI {
	d, e := f.Bench.document(), f.Measured
	if len(d.Series) == 0 {
		return nothing()
	}
	return app.Section().Class("block").ID("measured-cars").Body(
		app.H2().Text("Cars measured"),
		f.words(),
		app.Table().Class("figures contributors").ID("series-cars").Body(
			app.THead().Body(app.Tr().Body(heads("Car", "Peak, "+f.Bench.numbers().ToeUnit(), "Off the drawing", "")...)),
			app.TBody().Body(app.Range(d.Series).Slice(f.measuredCar)),
		),
		f.common(),
		app.Div().Class("deeds").Body(
			e.run("measured", button("Judge the cars measured", f.judge).ID("judge-series")),
			only(e.result != nil, func() app.UI {
				return f.Bench.formButton(f.Page, "save-series", "Series record (HTML)", report.SeriesForm)
			}),
		),
	)
}

// judge judges the cars in a worker.
func (f *forge) judge(app.Context, app.Event) {
	o := engine.SeriesOptions{Candidate: f.Bench.Desk.Selected().Name, Limit: new(model.YieldOf(f.Bench.document()).Limit)}
	f.Measured.start(f.Bench, calls.Series, f.Bench.document(), o, func(ctx app.Context, r *engine.SeriesResult) { f.Bench.Changed(ctx) })
}

// words says what the cars come to.
func (f *forge) words() app.UI {
	r := f.Measured.result
	if r == nil {
		return nothing()
	}
	return app.Div().Class("answer").ID("series-words").Body(
		only(f.Measured.of != f.Bench.document(), func() app.UI {
			return app.P().Class("warning").Text("The study has changed since: judge the cars again.")
		}),
		app.Range(r.Words).Slice(func(i int) app.UI { return app.P().Text(sentence(r.Words[i])) }),
	)
}

// verdictMarks stand before what a car comes to.
var verdictMarks = map[string]string{engine.SeriesPass: "✓ ", engine.SeriesFail: "✗ ", engine.SeriesOpen: "⚠ "}

// measuredCar is the row of a car.
func (f *forge) measuredCar(i int) app.UI {
	m := &f.Bench.document().Series[i]
	said, figure, band, off := "", "–", "", ""
	if r := f.Measured.result; r != nil && f.Measured.of == f.Bench.document() {
		c := &r.Cars[i]
		said = verdictMarks[c.Verdict] + c.Said()
		if c.Problem != "" {
			said += ": " + c.Problem
		}
		figure, band = f.toeText(c.Figure.Value), f.toeText(c.Figure.Low)+" to "+f.toeText(c.Figure.High)
		if o := c.Off; o != nil {
			off = f.toeText(engine.Number(o.Change)) + ", " + o.Side + " at " + model.SignedTravel(f.Bench.document(), o.Travel)
		}
	}
	return app.Tr().Body(
		app.Th().Scope("row").Class("named").Body(app.Text(m.Car), under(m.Date), under(said)),
		app.Td().Body(app.Text(figure), under(band)),
		app.Td().Text(off),
		app.Td().Body(
			button("Open", func(ctx app.Context, _ app.Event) {
				f.Bench.undoable(ctx, "The runs are on the run sheet again.", func() error { return f.Bench.session().ReopenCar(i) })
			}, m.Car).Aria("label", "Back to the run sheet: "+m.Car),
			button("×", func(ctx app.Context, _ app.Event) {
				f.Bench.undoable(ctx, m.Car+" is taken out.", func() error { return f.Bench.session().RemoveCar(i) })
			}, m.Car).Aria("label", "Take out "+m.Car),
		),
	)
}

// under is what stands beneath the text of a cell.
func under(text string) app.UI { return app.Small().Class("under").Text(text) }

// mostCommon is how many dimensions are listed that cars have in common.
const mostCommon = 5

// common lists what the cars are off alike.
func (f *forge) common() app.UI {
	if f.Measured.result == nil {
		return nothing()
	}
	list, d, n := f.Measured.result.InCommon(mostCommon), f.Bench.document(), f.Bench.numbers()
	if len(list) == 0 {
		return nothing()
	}
	return app.Table().Class("figures contributors").ID("series-common").Body(
		app.Caption().Text("Off on all cars alike, were it this dimension alone"),
		app.THead().Body(app.Tr().Body(heads("Dimension", "Off by", "Explains")...)),
		app.TBody().Body(app.Range(list).Slice(func(i int) app.UI {
			p, sides, err := solver.FindParameter(f.Bench.cars().Design, list[i].Parameter)
			if err != nil {
				return nothing()
			}
			return app.Tr().Body(app.Th().Scope("row").Text(p.Label+sideWord(sides)), app.Td().Text(n.Value(d, p, list[i].Alone)),
				app.Td().Text(number.Percent(100*list[i].Share)+" %"))
		})),
	)
}
