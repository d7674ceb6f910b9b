package ui

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/report"
	"toewright/internal/study"
)

// benchSheet is what goes to the bench: the arm's dimensions, the curves before and
// after, and under what conditions they hold.
type benchSheet struct {
	app.Compo
	Bench  bench
	State  *sheeting
	Series *forging // for the verdict on the same car
	Making *making  // the part drawing
}

// sheeting is what a sheet shows that is computed beside the page.
type sheeting struct {
	job   job
	page  job // that writes the sheet as a file
	arm   *engine.ArmResult
	of    *study.Document // the study that it is of
	car   string
	step  float64 // that the sizes are made to
	fault string
}

// OnMount and OnUpdate have the dimensions computed when the study has changed.
func (s *benchSheet) OnMount(ctx app.Context)  { ctx.Defer(s.refresh) }
func (s *benchSheet) OnUpdate(ctx app.Context) { ctx.Defer(s.refresh) }

// refresh computes the dimensions of the selected car, unless they are at hand.
func (s *benchSheet) refresh(app.Context) {
	doc, car := s.Bench.document(), s.Bench.Desk.Selected()
	if car == nil || s.State.job.running() || s.State.of == doc && s.State.car == car.Name && s.State.step == s.Making.step {
		return
	}
	s.State.of, s.State.car, s.State.step = doc, car.Name, s.Making.step
	s.State.job.start(s.Bench.Lasting, s.Bench.Caller, calls.Arm, doc, engine.ArmOptions{Candidate: car.Name, Step: s.Making.made(doc)}, func(_ app.Context, raw json.RawMessage, err error) {
		s.State.arm, err = answerOf[engine.ArmResult](raw, err)
		s.State.fault = faultOf(err)
	})
}

// Render shows the sheet as it is printed, with what can be taken away above.
func (s *benchSheet) Render() app.UI {
	car := s.Bench.Desk.Selected()
	if car == nil || car.Err != nil {
		return app.P().Text("The selected car cannot be solved: there is nothing to print.")
	}
	return app.Div().Class("make").Body(&makePart{Bench: s.Bench, State: s.Making}, s.sheet(car))
}

// sheet is what is printed.
func (s *benchSheet) sheet(car *model.Car) app.UI {
	return app.Div().Class("bench-sheet").Body(
		app.Div().Class("deeds no-print").Body(
			button("Print", func(app.Context, app.Event) { app.Window().Call("print") }).ID("print").Class("primary"),
			showButton(s.Bench, "show-cars", "Before and after"),
			s.Bench.formButton(&s.State.page, "save-sheet", "Bench sheet (HTML)", report.SheetForm),
			s.Bench.formButton(&s.State.page, "save-card", "Fitting card (HTML)", report.CardForm),
		),
		only(s.State.page.running(), func() app.UI { return s.State.page.render("save-sheet", "") }),
		s.takeAway(),
		s.title(car),
		s.Bench.borrowed(),
		s.sizes(),
		s.curves(),
		s.table(car),
		s.conditions(car),
		s.verdict(car),
		app.P().Class("cautions").Text(strings.Join(engine.Cautions, " ")),
	)
}

// sizes is the table of what is made: as it was, exact, on the shop's step, and how far that
// is off.
func (s *benchSheet) sizes() app.UI {
	if s.State.fault != "" {
		return app.P().Class("problem").Text(s.State.fault)
	}
	if s.State.arm == nil {
		return app.P().Aria("live", "polite").Text("The sizes are being computed.")
	}
	var list []choice
	for _, k := range s.Bench.Desk.ShopSteps() {
		list = append(list, choice{model.StepText(k.MM), k.Text})
	}
	rows := s.Bench.Desk.Sizes(s.State.arm)
	return app.Section().Class("make-sizes").Body(
		app.Div().Class("row").Body(
			app.H2().Text("Sizes, "+s.Bench.numbers().LengthUnit()),
			menu("shop-step", "Made to", model.StepText(s.Making.step), list, func(_ app.Context, value string) { s.Making.step, _ = strconv.ParseFloat(value, 64) }),
		),
		app.Table().Class("figures sheet-table").ID("sizes").Body(
			app.THead().Body(app.Tr().Body(heads("Centre of the outer ball", "Original", "Exact", "To make", "Off")...)),
			app.TBody().Body(app.Range(rows).Slice(func(i int) app.UI {
				r := rows[i]
				return app.Tr().Body(app.Th().Scope("row").Text(r.Label), app.Td().Text(r.Was), app.Td().Text(r.Exact), app.Td().Body(app.Strong().Text(r.Make)), app.Td().Text(r.Off))
			})),
		),
		app.P().Class("note").Text(s.Bench.Desk.RoundingCost(s.State.arm)),
	)
}

// shownCars are the base car and the selected one.
func (s *benchSheet) shownCars() []*model.Car {
	base, car := s.Bench.cars().Base(), s.Bench.Desk.Selected()
	if car == base {
		return []*model.Car{base}
	}
	return []*model.Car{base, car}
}

// takeAway are the buttons that save pictures and curves as files.
func (s *benchSheet) takeAway() app.UI {
	list := s.Bench.exports()
	return app.Details().Class("block no-print").Body(
		app.Summary().ID("exports").Text("Drawing and curves as files"),
		app.P().Class("note").Text("The drawing as it stands on the sheet, with its title block; the curves of the cars that are not hidden. SVG prints sharp at any size, PNG goes into a message."),
		app.Div().Class("deeds").Body(app.Range(list).Slice(func(i int) app.UI {
			return button(list[i].name, func(ctx app.Context, _ app.Event) { list[i].do(ctx) }).ID(fmt.Sprintf("export-%d", i))
		})),
	)
}

func (s *benchSheet) curves() app.UI {
	d := plot.Document{Title: "Toe change by travel, before and after", Picture: curvesOf(s.Bench.Desk, s.shownCars())}
	return app.Figure().Class("sheet-curves").Body(app.Raw(string(d.AppendInline(nil))))
}

// formButton hands the user what is written of the selected car in a form as a page of its
// own, as the command report does.
func (b bench) formButton(page *job, id, text, form string) app.UI {
	return button(text, func(app.Context, app.Event) {
		o := report.Options{Candidate: b.Desk.Selected().Name, Form: form}
		b.download(page, calls.Report, o, "-"+form+".html", caution)
	}).ID(id).Disabled(page.running())
}

// download hands the user the file that a call answers with, by the study's name and an
// ending, with a caution if any.
func (b bench) download(j *job, method string, options any, ending, caution string) {
	doc := b.document()
	j.start(b.Lasting, b.Caller, method, doc, options, func(ctx app.Context, raw json.RawMessage, err error) {
		file, err := answerOf[calls.File](raw, err)
		if err != nil {
			b.Say(ctx, plain(err), nil)
			return
		}
		download(fileName(doc.Name)+ending, file.Type, []byte(file.Text))
		b.Say(ctx, strings.TrimSpace("The file is on its way to your downloads. "+caution), nil)
	})
}
