package ui

import (
	"encoding/json"
	"slices"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// find states a search, runs it in a worker and shows what it found.
type find struct {
	app.Compo
	Bench bench
	State *finding
}

// finding is a search that runs, or what it found. It outlives the panel.
type finding struct {
	job    job
	answer *model.Answer
	fault  string // why there is no answer
}

// search returns the search as the study has it, or the usual one.
func (f *find) search() *study.Search {
	return model.SearchOf(f.Bench.document(), f.Bench.cars().Design)
}

// Render shows the search from what is free to what was found.
func (f *find) Render() app.UI {
	if err := f.Bench.cars().Err; err != nil {
		return app.Div().Body(
			app.P().Class("problem").Text("The base car cannot be solved: "+plain(err)),
			app.P().Text("Mend its points in Car; then there is something to find."),
		)
	}
	return app.Div().Class("find").Body(
		app.P().Class("note").Text("Finds the values of the free parameters that bring the curve nearest to its target. It runs beside the page; nothing waits for it."),
		f.Bench.fitUse(),
		f.run(),
		f.found(),
		f.variables(),
		f.target(),
		f.Bench.findWindow(),
		f.aim(),
		f.most(),
		&scenarios{Bench: f.Bench},
		&limits{Bench: f.Bench},
	)
}

// variables lists what is free, with its bounds.
func (f *find) variables() app.UI {
	list := f.search().Variables
	return app.Section().Class("block").Body(
		app.H2().Text("Free to change"),
		app.If(len(list) == 0, func() app.UI { return app.P().Class("problem").Text("Nothing is free: add a parameter.") }),
		app.Range(list).Slice(func(i int) app.UI { return &variable{Bench: f.Bench, Variable: list[i]} }),
		&picker{
			ID: "free", Label: "Free another parameter", Design: f.Bench.cars().Design,
			Taken: func(key string) bool {
				return slices.ContainsFunc(list, func(v study.Variable) bool { return v.Parameter == key })
			},
			Pick: func(ctx app.Context, key string) {
				f.Bench.edit(ctx, func() error { return f.Bench.session().Free(key) })
			},
		},
	)
}

// aim says which figure is made small.
func (f *find) aim() app.UI {
	value := f.search().Minimise
	if value == "" {
		value = "rms"
	}
	return choices("minimise", "Make small", value, []choice{{"rms", "RMS, the whole curve"}, {"peak", "peak, the worst travel"}},
		func(ctx app.Context, value string) {
			f.Bench.edit(ctx, func() error {
				return f.Bench.session().EditSearch("what is made small", "", func(s *study.Search) { s.Minimise = value })
			})
		})
}

// most asks whether most of the cars made are to be served rather than the one
// drawn; only a study with tolerances can.
func (f *find) most() app.UI {
	if len(f.Bench.document().Tolerances) == 0 {
		return app.Text("")
	}
	const share = 95
	value := "drawn"
	if f.search().Percentile != 0 {
		value = "most"
	}
	return choices("serve", "Serve", value, []choice{{"drawn", "the car as drawn"}, {"most", "95 % of the cars made within the tolerances"}},
		func(ctx app.Context, value string) {
			f.Bench.edit(ctx, func() error {
				return f.Bench.session().EditSearch("which cars are served", "", func(s *study.Search) {
					s.Percentile = map[string]float64{"most": share}[value]
				})
			})
		})
}

// run shows the button that starts the search, or how far it is.
func (f *find) run() app.UI {
	return runOf(&f.State.job, "find", f.best(), f.State.fault, button("Find", f.start).ID("find").Class("primary"))
}

// best says how good the best so far is.
func (f *find) best() string {
	if b := f.State.job.progress.Best; b.Valid() && f.State.job.progress.Evaluations > 0 {
		n := f.Bench.numbers()
		return "Best so far: " + n.ToeText(degrees(b)) + "."
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
	started := time.Now()
	params := worker.Params[engine.SearchOptions]{Study: doc}
	f.State.job.start(f.Bench.Lasting, f.Bench.Caller, calls.Search, params, func(ctx app.Context, raw json.RawMessage, err error) {
		f.arrived(ctx, doc, raw, err, time.Since(started))
	})
}

// arrived makes the answer a candidate and says what is to be known of it.
func (f *find) arrived(ctx app.Context, doc *study.Document, raw json.RawMessage, err error, took time.Duration) {
	var r engine.SearchResult
	if err == nil {
		err = json.Unmarshal(raw, &r)
	}
	if err != nil {
		f.State.fault = plain(err)
		return
	}
	f.State.answer, err = f.Bench.Desk.Found(doc, &r)
	if err != nil {
		f.State.fault = plain(err)
		f.Bench.Say(ctx, plain(err), nil)
		return
	}
	f.Bench.Say(ctx, "New candidate: "+f.State.answer.Name+", after "+seconds(took)+" of search.", f.Bench.Undo)
	f.Bench.Changed(ctx)
}

// found shows what was found.
func (f *find) found() app.UI {
	if f.State.answer == nil {
		return nil
	}
	return app.Section().Class("block answer").ID("answer").Aria("label", "What was found").Body(
		app.H2().Text(f.State.answer.Name),
		app.Dl().Class("values").Body(
			app.Range(f.State.answer.Values).Slice(func(i int) app.UI {
				v := f.State.answer.Values[i]
				return app.Div().Body(app.Dt().Text(v.Label), app.Dd().Text(v.Text))
			}),
		),
		app.Ul().Body(
			app.Range(f.State.answer.Remarks).Slice(func(i int) app.UI {
				return app.Li().Class(f.State.answer.Remarks[i].Class()).Text(f.State.answer.Remarks[i].Text)
			}),
		),
		cautionLine(),
	)
}
