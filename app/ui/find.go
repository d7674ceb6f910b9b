package ui

import (
	"encoding/json"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// find states a search, runs it in a worker and shows what it found.
type find struct {
	app.Compo
	Bench bench
	State *finding
	Asked *question
	// Frames draws the chart, where the best so far is shown.
	Frames frames
}

// OnUpdate and OnDismount have the chart show the best so far.
func (f *find) OnUpdate(app.Context) { f.showBest(f.State.job.progress.Values) }
func (f *find) OnDismount()          { f.showBest(nil) }

// showBest shows the curve of the values that a search has come to, none of nil.
func (f *find) showBest(values study.Changes) {
	if f.Bench.Desk.ShowBest(values) && f.Frames != nil {
		f.Frames.request()
	}
}

// finding is a search that runs, or what it found. It outlives the panel.
type finding struct {
	job    job
	of     *study.Search // that was searched
	answer *model.Answer
	took   time.Duration
	fault  string // why there is no answer
}

// Render shows the question, and at the foot what came of it.
func (f *find) Render() app.UI {
	if f.Bench.cars().Err != nil {
		return f.Bench.cannotFind()
	}
	return app.Div().Class("way").Body(
		f.Bench.fitUse(),
		f.Asked,
		app.Div().Class("result").Body(f.foot()),
	)
}

// foot shows how far the search is, or what it found and the button that starts it.
func (f *find) foot() app.UI {
	if f.State.job.running() {
		return f.State.job.render("find", f.best())
	}
	return app.Div().Body(
		f.Asked.State.check.render(f.Bench, f.State.answer == nil),
		only(f.State.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(f.State.fault) }),
		app.If(f.State.answer != nil, f.found).Else(f.deeds),
	)
}

// deeds are what can be done now: find, and look at what was found.
func (f *find) deeds() app.UI {
	start := button("Find", f.start).ID("find")
	if f.State.answer == nil {
		return app.Div().Class("deeds").Body(start.Class("primary"))
	}
	asked := f.State.of == f.Bench.document().Search
	return app.Div().Class("deeds").Body(
		button("Show it", f.show, f.State.answer.Name).ID("show-found"),
		start.Text("Find again").Class(when(!asked, "primary", "")),
		button("Compare", func(ctx app.Context, _ app.Event) { f.Bench.Open(ctx, "compare") }, "found").ID("compare-found").Class(when(asked, "primary", "")),
	)
}

// best says how good the best so far is.
func (f *find) best() string {
	if b := f.State.job.progress.Best; b.Valid() && f.State.job.progress.Evaluations > 0 {
		return f.Bench.numbers().ToeText(degrees(b))
	}
	return ""
}

// start runs the search on the study as it stands.
func (f *find) start(app.Context, app.Event) {
	doc := model.WithSearch(f.Bench.document(), f.Bench.cars().Design)
	f.State.answer, f.State.fault = nil, ""
	if err := doc.ReadyToSearch(); err != nil {
		f.State.fault = plain(err)
		return
	}
	f.Asked.State.check.rest()
	started := time.Now()
	f.State.job.start(f.Bench.Lasting, f.Bench.Caller, calls.Search, doc, nil, func(ctx app.Context, raw json.RawMessage, err error) {
		f.arrived(ctx, doc, raw, err, time.Since(started))
	})
}

// arrived makes the answer a candidate and says what is to be known of it.
func (f *find) arrived(ctx app.Context, doc *study.Document, raw json.RawMessage, err error, took time.Duration) {
	r, err := answerOf[engine.SearchResult](raw, err)
	if err == nil {
		f.State.answer, err = f.Bench.Desk.Found(doc, r)
	}
	if err != nil {
		f.State.fault = plain(err)
		f.Bench.Say(ctx, f.State.fault, nil)
		return
	}
	f.State.of, f.State.took = f.Bench.document().Search, took
	f.Bench.Say(ctx, "New candidate: "+f.State.answer.Name+", after "+seconds(took)+" of search.", f.Bench.Undo)
	f.Bench.Changed(ctx)
}

// show selects what was found.
func (f *find) show(ctx app.Context, _ app.Event) {
	for _, car := range f.Bench.cars().List {
		if car.Name == f.State.answer.Name {
			f.Bench.Desk.Select(car.Index)
			f.Bench.Changed(ctx)
			return
		}
	}
	f.Bench.Say(ctx, f.State.answer.Name+" is no candidate any more: find it again.", nil)
}
