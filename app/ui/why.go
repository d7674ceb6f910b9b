package ui

import (
	"encoding/json"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// why says under the drawing why the selected car's wheels toe as they do, and makes a
// candidate of what would mend that.
type why struct {
	app.Compo

	Bench   bench
	State   *whying
	Version uint64 // of the desk, so that go-app renders it anew
}

// whying is what is known of the toe of a car. It outlives the component.
type whying struct {
	job    job
	result *engine.WhyResult
	of     *study.Document // that was asked about last
	car    string
	fault  string
}

// OnMount and OnUpdate have the car explained when it has changed.
func (w *why) OnMount(ctx app.Context)  { ctx.Defer(w.refresh) }
func (w *why) OnUpdate(ctx app.Context) { ctx.Defer(w.refresh) }

// refresh has the selected car explained, unless it is or a hand still moves it. What is
// computed takes longer than a frame: a worker does it.
func (w *why) refresh(app.Context) {
	doc, car, s := w.Bench.Desk.Session.Document(), w.Bench.Desk.Selected(), w.State
	if w.Bench.Desk.Moving || w.Bench.Caller == nil || car == nil || car.Err != nil || s.of == doc && s.car == car.Name {
		return
	}
	s.job.drop()
	s.of, s.car = doc, car.Name
	s.job.start(w.Bench.Lasting, w.Bench.Caller, calls.Why, doc, w.Bench.Desk.WhyOptions(), func(_ app.Context, raw json.RawMessage, err error) {
		s.result, err = answerOf[engine.WhyResult](raw, err)
		s.fault = faultOf(err)
	})
}

// Render shows the causes, those of each side by themselves where the sides differ.
func (w *why) Render() app.UI {
	car, s := w.Bench.Desk.Selected(), w.State
	class := "why"
	if s.job.running() || s.of != w.Bench.Desk.Session.Document() {
		class += " stale" // of the car as it was
	}
	section := whySection(class)
	switch {
	case car == nil || car.Err != nil:
		return section
	case s.fault != "":
		return section.Body(app.P().Class("problem").Text(s.fault))
	case s.result == nil:
		return section
	}
	e := w.Bench.Desk.Explained(s.result)
	return section.Body(
		app.Range(e.Sides).Slice(func(i int) app.UI { return w.side(e, i) }),
	)
}

// whySection is the place of what is said. Its height is always the same, so that the
// drawing above keeps still: it scrolls, and so the keyboard must reach it.
func whySection(class string) app.HTMLSection {
	return app.Section().Class(class).ID("why").Aria("label", "Why toe changes").TabIndex(0)
}

// side shows what is to be said of one side, or of both.
func (w *why) side(e *model.Why, index int) app.UI {
	s := &e.Sides[index]
	class := "why-side"
	if len(e.Sides) == 1 {
		class += " alone"
	}
	if len(e.Sides) == 1 || solver.Side(index) == w.Bench.Desk.View.Side { // a phone shows it alone
		class += " charted"
	}
	return app.Div().Class(class).Body(
		app.H2().Body(app.Text(s.Heading), only(s.Decides != "", func() app.UI { return app.Small().Text(" " + s.Decides) })),
		only(index == len(e.Sides)-1, func() app.UI { return app.P().Class("why-of").Text(e.Of) }),
		only(s.Problem != "", func() app.UI { return app.P().Class("problem").Text(s.Problem) }),
		only(s.Good != "", func() app.UI {
			return app.P().Class("why-good").Body(app.Text("✓ "+s.Good), app.Span().Text(" "+s.GoodBy))
		}),
		only(s.Problem == "" && s.Good == "" && len(s.Causes) == 0, func() app.UI { return app.P().Text("There is nothing to mend: toe is as wanted.") }),
		app.Div().Class("why-causes").Body(
			app.Range(s.Causes).Slice(func(i int) app.UI { return w.cause(&s.Causes[i], index, i) }),
		),
	)
}

// cause shows a cause, what its move would do to each set-up, and the button that makes it.
func (w *why) cause(c *model.WhyCause, side, index int) app.UI {
	return app.Div().Class("why-cause").Body(
		app.Div().Class("why-words").Body(
			app.P().Body(app.Strong().Text(c.Share), app.Text(" "+c.Text)),
			only(len(c.Peaks) > 0, func() app.UI { return whyPeaks(c.Peaks) }),
			app.Range(c.Notes).Slice(func(i int) app.UI { return app.P().Class("note " + c.Notes[i].Class()).Text(c.Notes[i].Text) }),
		),
		only(c.CanTry(), func() app.UI {
			return button("Try it", func(ctx app.Context, _ app.Event) { w.try(ctx, c) }, side, index, w.State.car).
				Disabled(w.State.job.running()).Aria("label", "Try it: "+c.Text)
		}),
	)
}

// whyPeaks lists the peak of each set-up before a move and after it.
func whyPeaks(list []model.WhyPeak) app.UI {
	return app.Ul().Class("why-peaks").Aria("label", "Peak toe change less target, before and after").Body(
		app.Range(list).Slice(func(i int) app.UI {
			p := &list[i]
			return app.Li().Body(
				app.Span().Class("note").Text(p.Name+" "), app.Text(p.Before+" → "), app.Strong().Text(p.After),
				only(p.Worse, func() app.UI { return app.Span().Class("warning").Text(" more") }),
			)
		}),
	)
}

// try makes a candidate of a cause's move and selects it.
func (w *why) try(ctx app.Context, c *model.WhyCause) {
	w.Bench.undoable(ctx, "Made and selected: "+c.Name+".", func() error { return w.Bench.Desk.Try(c) })
}
